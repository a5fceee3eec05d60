package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.UnauthorizedResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Lets through to a route whom its role allows. */
public final class AccessFilter {
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
     * told who does what they asked for.
     */
    public void check(Context ctx) {
        Bodies.check(ctx, this);
        for (var role : ctx.routeRoles()) {
            if (role instanceof Role needed
                    && needed != Role.ANYONE
                    && needed != Role.EXEMPT // a session opens nothing there, and is not looked up
                    && !principal(ctx).may(needed)) {
                if (needed != Role.STUDENT && principal(ctx).may(Role.EDUCATOR)) {
                    throw new NotYoursResponse(needed);
                }
                refuse(ctx, needed);
                return;
            }
        }
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
        return known.educator().map(id -> "educator " + id.value()).orElse("a student");
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
        boolean reading = ctx.method().equals(HandlerType.GET) || ctx.method().equals(HandlerType.HEAD);
        if (!reading || !Accept.wantsPage(ctx)) {
            throw new UnauthorizedResponse();
        }
        String signIn = needed == Role.STUDENT ? "/sign-in" : "/desk/sign-in";
        ctx.header("Cache-Control", "no-store");
        ctx.redirect(signIn + "?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8), HttpStatus.SEE_OTHER);
    }

    private static void refuse(Context ctx, Role needed) {
        String query = ctx.queryString() == null ? "" : "?" + ctx.queryString();
        sendToSignIn(ctx, needed, ctx.path() + query);
        ctx.skipRemainingHandlers();
    }
}
