package groundbass.web.general;

import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tells a watching program whether this server can do its work. */
public final class HealthPage implements PageGroup {
    private static final Logger log = LoggerFactory.getLogger(HealthPage.class);
    private static final int SECONDS = 2;

    private final Jdbi jdbi;

    public HealthPage(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/healthz", Role.ANYONE, this::health);
    }

    private void health(Context ctx) {
        boolean well = databaseAnswers();
        ctx.status(well ? HttpStatus.OK : HttpStatus.SERVICE_UNAVAILABLE);
        ctx.header("Cache-Control", "no-store");
        ctx.json(Map.of("status", well ? "ok" : "failing", "database", well ? "ok" : "failing"));
    }

    private boolean databaseAnswers() {
        try {
            return jdbi.withHandle(h -> h.createQuery("select 1")
                            .setQueryTimeout(SECONDS)
                            .mapTo(Integer.class)
                            .one())
                    == 1;
        } catch (JdbiException e) {
            log.error("the database does not answer", e);
            return false;
        }
    }
}
