package groundbass.web.general;

import groundbass.store.BlobStore;
import groundbass.store.Database;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells a watching program whether this server is alive, and whether it can do its work: then a row and a file are really
 * written, at most once in some seconds, however often anybody asks.
 */
public final class HealthPage implements PageGroup {
    private static final Logger log = LoggerFactory.getLogger(HealthPage.class);
    private static final Duration FRESH = Duration.ofSeconds(2);

    private final Database database;
    private final BlobStore files;
    private final Clock clock;
    private Health last = new Health(true, true, Instant.MIN);

    private record Health(boolean database, boolean files, Instant at) {
        boolean isWell() {
            return database && files;
        }

        /** A clock that was set back does not keep it for longer. */
        boolean holds(Instant now) {
            return !now.isBefore(at) && now.isBefore(at.plus(FRESH));
        }
    }

    public HealthPage(Database database, BlobStore files, Clock clock) {
        this.database = database;
        this.files = files;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/healthz", Role.ANYONE, this::health);
        routes.get("/livez", Role.ANYONE, HealthPage::alive);
    }

    private void health(Context ctx) {
        var health = health();
        ctx.status(health.isWell() ? HttpStatus.OK : HttpStatus.SERVICE_UNAVAILABLE);
        ctx.header("Cache-Control", "no-store");
        ctx.json(Map.of(
                "status", word(health.isWell()), "database", word(health.database()), "files", word(health.files())));
    }

    /** Whether the process answers at all: what it stands on may be away for a while without any use in a new start. */
    private static void alive(Context ctx) {
        ctx.header("Cache-Control", "no-store").json(Map.of("status", word(true)));
    }

    private static String word(boolean well) {
        return well ? "ok" : "failing";
    }

    private synchronized Health health() {
        var now = clock.instant();
        if (last.at().equals(Instant.MIN) || !last.holds(now)) {
            last = new Health(databaseIsWritten(), filesAreWritten(), now);
        }
        return last;
    }

    private boolean databaseIsWritten() {
        try {
            database.tryWriting();
            return true;
        } catch (JdbiException e) {
            log.error("the database cannot be written", e);
            return false;
        }
    }

    private boolean filesAreWritten() {
        try {
            files.tryWriting();
            return true;
        } catch (IOException e) {
            log.error("files cannot be written", e);
            return false;
        }
    }
}
