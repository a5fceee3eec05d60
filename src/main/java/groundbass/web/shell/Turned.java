package groundbass.web.shell;

import groundbass.web.view.PageOf;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;

/** Reads which page of a list an address asks for. */
public final class Turned {
    private static final String PAGE = "page";

    private Turned() {}

    /** The first where the address names none; 404 where it names something that is no page. */
    public static PageOf to(Context ctx, int size) {
        String asked = ctx.queryParam(PAGE);
        return new PageOf(ctx.path(), asked == null ? 1 : number(asked), size);
    }

    private static int number(String asked) {
        try {
            int number = Integer.parseInt(asked);
            if (PageOf.canBe(number)) {
                return number;
            }
        } catch (NumberFormatException noNumber) {
            // told below, like a number that is too small
        }
        throw new NotFoundResponse();
    }
}
