package groundbass.web.desk;

import groundbass.audience.Person;
import groundbass.audience.Sessions;
import groundbass.audience.Token;
import groundbass.catalog.Educator;
import groundbass.catalog.EducatorId;
import groundbass.catalog.Educators;
import groundbass.web.shell.Limit;
import groundbass.web.shell.RateLimits;
import groundbass.web.shell.SessionCookie;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/** Lets educators in and out. Every try counts against the caller and against the address that is tried. */
final class Entrance {
    // the row ends the session earlier; the cookie only has to outlast it
    private static final Duration LONGEST = Duration.ofDays(7);

    private final Educators educators;
    private final Sessions sessions;
    private final SessionCookie cookie;
    private final RateLimits limits;

    Entrance(Educators educators, Sessions sessions, SessionCookie cookie, RateLimits limits) {
        this.educators = educators;
        this.sessions = sessions;
        this.cookie = cookie;
        this.limits = limits;
    }

    /** Signs in whoever has this address and password; answers 429 where it was tried too often. */
    Optional<Educator> enter(Context ctx, String email, String password) {
        limits.demand(ctx, Limit.SIGN_IN);
        limits.demand(ctx, Limit.SIGN_IN, "educator " + email.strip().toLowerCase(Locale.ROOT));
        var known = educators.verify(email, password);
        known.ifPresent(educator -> open(ctx, educator.id()));
        return known;
    }

    /** Opens a session here; one that this browser had before ends. */
    void open(Context ctx, EducatorId educator) {
        cookie.token(ctx).map(Token::new).ifPresent(sessions::close);
        cookie.set(ctx, sessions.open(new Person.OfEducator(educator)).value(), LONGEST);
    }

    /** Ends every session of this educator and opens a new one here. */
    void reopen(Context ctx, EducatorId educator) {
        sessions.closeAll(new Person.OfEducator(educator));
        open(ctx, educator);
    }

    void leave(Context ctx) {
        cookie.token(ctx).map(Token::new).ifPresent(sessions::close);
        cookie.clear(ctx);
    }

    /** Counts a try at something else that is secret: a set-up code, a present password. */
    void count(Context ctx) {
        limits.demand(ctx, Limit.SIGN_IN);
    }
}
