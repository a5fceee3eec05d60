package groundbass.web.student.account;

import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignedIn;
import groundbass.web.shell.SessionCookie;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Optional;

/** Lets students in and out. */
public final class StudentSignIn {
    // the row ends the session earlier; the cookie only has to outlast it
    private static final Duration LONGEST = Duration.ofDays(365);

    private final Sessions sessions;
    private final SessionCookie cookie;

    public StudentSignIn(Sessions sessions, SessionCookie cookie) {
        this.sessions = sessions;
        this.cookie = cookie;
    }

    /** A session that this browser had before ends. */
    void open(Context ctx, SignedIn.As student) {
        end(ctx);
        cookie.set(ctx, student.token().value(), LONGEST);
    }

    void leave(Context ctx) {
        end(ctx);
        cookie.clear(ctx);
    }

    /** The token that this browser carries. */
    Optional<SecretToken> token(Context ctx) {
        return cookie.token(ctx).map(SecretToken::new);
    }

    private void end(Context ctx) {
        token(ctx).ifPresent(sessions::close);
    }
}
