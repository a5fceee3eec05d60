package groundbass.web.student.file;

import groundbass.web.shell.SiteCookie;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Optional;

/**
 * Joins the ranges of one download: a signed number that the browser sends back with requests for that very file and
 * with no others.
 */
final class TakeCookie {
    private static final Duration A_DAY = Duration.ofDays(1);

    private final boolean secure;

    TakeCookie(boolean secure) {
        this.secure = secure;
    }

    Optional<String> read(Context ctx) {
        return cookie(ctx).read(ctx);
    }

    void set(Context ctx, String token) {
        cookie(ctx).set(ctx, token, A_DAY);
    }

    private SiteCookie cookie(Context ctx) {
        return new SiteCookie("take", ctx.path(), secure);
    }
}
