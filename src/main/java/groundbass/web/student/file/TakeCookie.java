package groundbass.web.student.file;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;

/**
 * Joins the ranges of one download: a signed number that the browser sends back with requests for that very file and
 * with no others.
 */
final class TakeCookie {
    private static final String NAME = "take";
    private static final int A_DAY = 24 * 60 * 60;

    private final boolean secure;

    TakeCookie(boolean secure) {
        this.secure = secure;
    }

    Optional<String> read(Context ctx) {
        return Optional.ofNullable(ctx.cookie(NAME)).filter(token -> !token.isBlank());
    }

    void set(Context ctx, String token) {
        ctx.cookie(new Cookie(NAME, token, ctx.path(), A_DAY, secure, true, null, SameSite.LAX));
    }
}
