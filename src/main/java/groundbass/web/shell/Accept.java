package groundbass.web.shell;

import io.javalin.http.Context;

/** What kind of answer the asker can read. */
final class Accept {
    /** Below this address programs are answered, whatever they say that they can read. */
    private static final String OF_PROGRAMS = "/api/";

    private Accept() {}

    /** A browser names HTML when it loads a page; a program does not. */
    static boolean wantsPage(Context ctx) {
        String accept = ctx.header("Accept");
        return accept != null
                && !ctx.path().startsWith(OF_PROGRAMS)
                && (accept.contains("text/html") || accept.contains("application/xhtml+xml"));
    }
}
