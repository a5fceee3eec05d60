package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.UnauthorizedResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Lets through to a route whom its role allows. */
public final class AccessFilter {
    /** Where a second factor is set up. */
    public static final String SET_UP_FACTOR = "/desk/account/second-factor";

    private static final String VISITOR = "visitor";

    private final PrincipalResolver principals;
    private final SessionCookie cookie;

    public AccessFilter(PrincipalResolver principals, SessionCookie cookie) {
        this.principals = principals;
        this.cookie = cookie;
    }

    /** Who sends this request; looked up once, so that a page which says that the lookup failed does not fail at it too. */
    public Principal principal(Context ctx) {
        Principal known = ctx.attribute(VISITOR);
        if (known != null) {
            return known;
        }
        ctx.attribute(VISITOR, Principal.UNKNOWN);
        var token = cookie.token(ctx);
        var principal = token.isEmpty() ? Principal.UNKNOWN : principals.of(token);
        ctx.attribute(VISITOR, principal);
        return principal;
    }

    /**
     * Sends a reader to the sign-in that fits; a program, or a form that would be lost, gets 401. Who has a desk already is
     * told who does what they asked for, and who still lacks the second factor that the site demands sets it up first.
     */
    public void check(Context ctx) {
        Bodies.check(ctx, this);
        for (var role : ctx.routeRoles()) {
            if (role instanceof Role needed
                    && needed != Role.ANYONE
                    && needed != Role.EXEMPT // a session opens nothing there, and is not looked up
                    && !principal(ctx).may(needed)) {
                if (needed != Role.STUDENT && principal(ctx).may(Role.ENTERED)) {
                    sendOn(ctx, needed);
                    return;
                }
                refuse(ctx, needed);
                return;
            }
        }
    }

    /** Who has come in at the desk is told who does what they asked for, or led to what they have to do first. */
    private void sendOn(Context ctx, Role needed) {
        if (principal(ctx).may(Role.EDUCATOR)) {
            throw new NotYoursResponse(needed);
        }
        if (!isReading(ctx)) {
            // a script of a page says then that the sign-in is over, and keeps what was typed
            throw Accept.wantsPage(ctx) ? NotYoursResponse.lackingFactor() : new UnauthorizedResponse();
        }
        goOnAt(ctx, SET_UP_FACTOR, asked(ctx));
        ctx.skipRemainingHandlers();
    }

    /** Whether a route is not for everybody. */
    static boolean isGuarded(Context ctx) {
        return ctx.routeRoles().stream()
                .anyMatch(role -> role instanceof Role needed && needed != Role.ANYONE && needed != Role.EXEMPT);
    }

    /** Who sends this request, for the log, as far as anybody has asked; which student it is stays out of it. */
    static String who(Context ctx) {
        Principal known = ctx.attribute(VISITOR);
        if (known == null || known.equals(Principal.UNKNOWN)) {
            return "somebody";
        }
        return known.educator()
                .or(known::lackingFactor)
                .map(id -> "educator " + id.value())
                .orElse("a student");
    }

    /** Whether who sends this request keeps the site, as far as anybody has asked. */
    static boolean isOwner(Context ctx) {
        Principal known = ctx.attribute(VISITOR);
        return known != null && known.may(Role.OWNER);
    }

    /**
     * Sends a reader to the sign-in that fits, from where they go on to {@code next}; a program, or a form that would be
     * lost, gets 401. A handler that calls this returns.
     */
    public static void sendToSignIn(Context ctx, Role needed, String next) {
        if (!isReading(ctx)) {
            throw new UnauthorizedResponse();
        }
        goOnAt(ctx, needed == Role.STUDENT ? "/sign-in" : "/desk/sign-in", next);
    }

    private static boolean isReading(Context ctx) {
        boolean reading = ctx.method().equals(HandlerType.GET) || ctx.method().equals(HandlerType.HEAD);
        return reading && Accept.wantsPage(ctx);
    }

    private static void goOnAt(Context ctx, String page, String next) {
        ctx.header("Cache-Control", "no-store");
        ctx.redirect(page + "?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8), HttpStatus.SEE_OTHER);
    }

    private static String asked(Context ctx) {
        return ctx.queryString() == null ? ctx.path() : ctx.path() + "?" + ctx.queryString();
    }

    private static void refuse(Context ctx, Role needed) {
        sendToSignIn(ctx, needed, asked(ctx));
        ctx.skipRemainingHandlers();
    }
}
