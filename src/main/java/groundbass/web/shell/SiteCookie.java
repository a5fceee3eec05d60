package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;

/**
 * A cookie of ours: no script reads it, and no form of another site sends it. Where the site is encrypted, its name is one
 * that a browser takes over an encrypted connection alone and, where it is for the whole site, from this host alone
 * (RFC 6265bis section 4.1.3).
 */
public final class SiteCookie {
    private static final String WHOLE_SITE = "/";

    private final String name;
    private final String path;
    private final boolean secure;

    /** One that goes with every request. @param secure whether the site is encrypted */
    public SiteCookie(String name, boolean secure) {
        this(name, WHOLE_SITE, secure);
    }

    /** One that goes with requests for this path, and for what is below it. */
    public SiteCookie(String name, String path, boolean secure) {
        this.name = prefix(path, secure) + name;
        this.path = Objects.requireNonNull(path);
        this.secure = secure;
    }

    private static String prefix(String path, boolean secure) {
        if (!secure) {
            return "";
        }
        return path.equals(WHOLE_SITE) ? "__Host-" : "__Secure-";
    }

    /** What the browser has sent; anybody may have changed it. */
    public Optional<String> read(Context ctx) {
        return Optional.ofNullable(ctx.cookie(name)).filter(value -> !value.isBlank());
    }

    public void set(Context ctx, String value, Duration lasting) {
        set(ctx, value, (int) lasting.toSeconds());
    }

    public void forget(Context ctx) {
        set(ctx, "", 0);
    }

    private void set(Context ctx, String value, int seconds) {
        ctx.cookie(new Cookie(name, value, path, seconds, secure, true, null, SameSite.LAX));
    }
}
