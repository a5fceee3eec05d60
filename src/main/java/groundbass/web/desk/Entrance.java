package groundbass.web.desk;

import groundbass.audience.Person;
import groundbass.audience.Sessions;
import groundbass.audience.Token;
import groundbass.catalog.Audit;
import groundbass.catalog.Educator;
import groundbass.catalog.EducatorId;
import groundbass.catalog.Educators;
import groundbass.web.shell.Devices;
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
    private final Audit audit;

    Entrance(Educators educators, Sessions sessions, SessionCookie cookie, RateLimits limits, Audit audit) {
        this.educators = educators;
        this.sessions = sessions;
        this.cookie = cookie;
        this.limits = limits;
        this.audit = audit;
    }

    /** Signs in whoever has this address and password; answers 429 where it was tried too often. */
    Optional<Educator> enter(Context ctx, String email, String password) {
        limits.demand(ctx, Limit.SIGN_IN);
        limits.demand(ctx, Limit.SIGN_IN, "educator " + email.strip().toLowerCase(Locale.ROOT));
        var known = educators.verify(email, password);
        known.ifPresentOrElse(educator -> letIn(ctx, educator.id()), () -> turnAway(email));
        return known;
    }

    private void letIn(Context ctx, EducatorId educator) {
        open(ctx, educator);
        audit.note(educator.value(), "sign-in.done", Devices.of(ctx).key());
    }

    /** Whose account was tried, if anybody's: an address of a stranger is not kept. */
    private void turnAway(String email) {
        String tried =
                educators.withEmail(email).map(known -> known.id().value()).orElse("");
        audit.note(Audit.STRANGER, "sign-in.refused", tried);
    }

    /** Opens a session here; one that this browser had before ends. */
    void open(Context ctx, EducatorId educator) {
        cookie.token(ctx).map(Token::new).ifPresent(sessions::close);
        cookie.set(
                ctx,
                sessions.open(new Person.OfEducator(educator), Devices.of(ctx)).value(),
                LONGEST);
    }

    /** Ends every session of this educator and opens a new one here. */
    void reopen(Context ctx, EducatorId educator) {
        sessions.closeAll(new Person.OfEducator(educator));
        open(ctx, educator);
    }

    /** The token that this browser carries. */
    Optional<Token> token(Context ctx) {
        return cookie.token(ctx).map(Token::new);
    }

    void leave(Context ctx) {
        cookie.token(ctx).map(Token::new).ifPresent(sessions::close);
        cookie.clear(ctx);
    }

    /** Counts a try at something else that is secret: a set-up code, a present password. */
    void count(Context ctx) {
        limits.demand(ctx, Limit.SIGN_IN);
    }

    /** Counts a try for one address. */
    void count(Context ctx, String who) {
        limits.demand(ctx, Limit.SIGN_IN, who);
    }
}
