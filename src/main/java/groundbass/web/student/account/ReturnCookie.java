package groundbass.web.student.account;

import groundbass.web.shell.Next;
import groundbass.web.shell.SiteCookie;
import io.javalin.http.Context;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/**
 * Remembers, while a letter is on its way, where its reader was. The letter itself does not say: it may be opened by
 * somebody else.
 */
public final class ReturnCookie {
    private static final String OTHERWISE = "/me";
    private static final Duration HALF_AN_HOUR = Duration.ofMinutes(30);

    private final SiteCookie cookie;

    public ReturnCookie(boolean secure) {
        this.cookie = new SiteCookie("way-back", "/sign-in", secure);
    }

    /** A path of this site out of whatever was wished. */
    static String of(Optional<String> wish) {
        return Next.orElse(wish, OTHERWISE);
    }

    void keep(Context ctx, String path) {
        cookie.set(ctx, URLEncoder.encode(of(Optional.of(path)), StandardCharsets.UTF_8), HALF_AN_HOUR);
    }

    /** Where to go now; forgotten afterwards. Read as carefully as it was written: anybody may change a cookie. */
    String take(Context ctx) {
        var kept = cookie.read(ctx);
        kept.ifPresent(path -> cookie.forget(ctx));
        return of(kept.flatMap(ReturnCookie::decode));
    }

    private static Optional<String> decode(String text) {
        try {
            return Optional.of(URLDecoder.decode(text, StandardCharsets.UTF_8));
        } catch (IllegalArgumentException notEncoded) {
            return Optional.empty();
        }
    }
}
