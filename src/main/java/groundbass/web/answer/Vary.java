package groundbass.web.answer;

import io.javalin.http.Context;

/** Which request headers an answer depends on (RFC 9110 section 12.5.5), gathered in one field. */
public final class Vary {
    private static final String NAME = "Vary";

    private Vary() {}

    public static void on(Context ctx, String header) {
        String before = ctx.res().getHeader(NAME);
        ctx.header(NAME, before == null ? header : before + ", " + header);
    }
}
