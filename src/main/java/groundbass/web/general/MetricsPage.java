package groundbass.web.general;

import groundbass.web.shell.Bearer;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.function.Supplier;

/**
 * Figures of the process, for a program that shows the operator's token. A session of the desk opens nothing here: they speak of the machine, which its operator answers for.
 */
public final class MetricsPage implements PageGroup {
    private static final String TEXT_FORM = "text/plain; version=0.0.4; charset=utf-8";

    private final byte[] token;
    private final RateLimits limits;
    private final Supplier<String> figures;

    /** @param figures in the text form that Prometheus reads */
    public MetricsPage(String token, RateLimits limits, Supplier<String> figures) {
        this.token = token.getBytes(StandardCharsets.UTF_8);
        this.limits = limits;
        this.figures = figures;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/metrics", Role.EXEMPT, this::metrics);
    }

    private void metrics(Context ctx) {
        ctx.header("Cache-Control", "no-store");
        if (Bearer.of(ctx).filter(this::isToken).isPresent()) {
            ctx.contentType(TEXT_FORM).result(figures.get());
            return;
        }
        limits.demand(ctx, Limit.PROGRAM_REFUSED);
        ctx.header("WWW-Authenticate", "Bearer realm=\"metrics\"").status(HttpStatus.UNAUTHORIZED);
    }

    /** Takes as long whatever was guessed right of it. */
    private boolean isToken(String shown) {
        return MessageDigest.isEqual(token, shown.getBytes(StandardCharsets.UTF_8));
    }
}
