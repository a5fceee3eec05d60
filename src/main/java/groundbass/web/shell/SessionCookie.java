package groundbass.web.shell;

import io.javalin.http.Context;
import java.time.Duration;
import java.util.Optional;

/** The one cookie that says who a reader is: a random token, meaningless in itself. */
public final class SessionCookie {
    private final SiteCookie cookie;

    public SessionCookie(Installation installation) {
        this.cookie = new SiteCookie("session", installation.secure());
    }

    public Optional<String> token(Context ctx) {
        return cookie.read(ctx);
    }

    public void set(Context ctx, String token, Duration lasting) {
        cookie.set(ctx, token, lasting);
    }

    public void clear(Context ctx) {
        cookie.forget(ctx);
    }
}
