package groundbass.web.shell.log;

import io.javalin.http.Context;

/**
 * How the log names what was asked for. A link that opens something has its secret in the path, in the place that its
 * route calls {@code token}: there the route is named instead, and so where no route was found yet.
 */
public final class AskedFor {
    private static final String SECRET = "{token}";
    private static final String NO_ROUTE = "(no route)";

    private AskedFor() {}

    /** As it was sent, so that nothing in it begins a line of its own. */
    public static String path(Context ctx) {
        var route = ctx.endpoints().matchedHttpEndpoint();
        if (route == null) {
            return NO_ROUTE;
        }
        return route.path.contains(SECRET) ? route.path : ctx.req().getRequestURI();
    }

    /** What all that was asked for in one way has in common. */
    static String route(Context ctx) {
        var route = ctx.endpoints().matchedHttpEndpoint();
        return route == null ? NO_ROUTE : route.path;
    }
}
