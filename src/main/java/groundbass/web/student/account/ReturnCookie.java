package groundbass.web.student.account;

import groundbass.web.shell.Next;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Remembers, while a letter is on its way, where its reader was. The letter itself does not say: it may be opened by
 * somebody else.
 */
public final class ReturnCookie {
    private static final String NAME = "way-back";
    private static final String PATH = "/sign-in";
    private static final String OTHERWISE = "/me";
    private static final int HALF_AN_HOUR = 30 * 60;

    private final boolean secure;

    public ReturnCookie(boolean secure) {
        this.secure = secure;
    }

    /** A path of this site out of whatever was wished. */
    static String of(Optional<String> wish) {
        return Next.orElse(wish, OTHERWISE);
    }

    void keep(Context ctx, String path) {
        ctx.cookie(cookie(URLEncoder.encode(of(Optional.of(path)), StandardCharsets.UTF_8), HALF_AN_HOUR));
    }

    /** Where to go now; forgotten afterwards. Read as carefully as it was written: anybody may change a cookie. */
    String take(Context ctx) {
        var kept = Optional.ofNullable(ctx.cookie(NAME));
        kept.ifPresent(path -> ctx.cookie(cookie("", 0)));
        return of(kept.flatMap(ReturnCookie::decode));
    }

    private static Optional<String> decode(String text) {
        try {
            return Optional.of(URLDecoder.decode(text, StandardCharsets.UTF_8));
        } catch (IllegalArgumentException notEncoded) {
            return Optional.empty();
        }
    }

    private Cookie cookie(String value, int seconds) {
        return new Cookie(NAME, value, PATH, seconds, secure, true, null, SameSite.LAX);
    }
}
