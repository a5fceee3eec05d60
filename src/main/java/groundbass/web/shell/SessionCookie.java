package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.time.Duration;
import java.util.Optional;

/** The one cookie that says who a reader is: a random token, meaningless in itself. */
public final class SessionCookie {
    private final boolean secure;
    private final String name;

    public SessionCookie(Installation installation) {
        this.secure = installation.secure();
        // the prefix lets no neighbouring host set it (RFC 6265bis section 4.1.3.2); it needs TLS
        this.name = secure ? "__Host-session" : "session";
    }

    public Optional<String> token(Context ctx) {
        return Optional.ofNullable(ctx.cookie(name)).filter(value -> !value.isBlank());
    }

    public void set(Context ctx, String token, Duration lasting) {
        ctx.cookie(cookie(token, (int) lasting.toSeconds()));
    }

    public void clear(Context ctx) {
        ctx.cookie(cookie("", 0));
    }

    private Cookie cookie(String value, int seconds) {
        return new Cookie(name, value, "/", seconds, secure, true, null, SameSite.LAX);
    }
}
