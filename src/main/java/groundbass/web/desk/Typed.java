package groundbass.web.desk;

import io.javalin.http.Context;
import java.util.Optional;

/** What somebody typed into a form; a field that is missing counts as empty. */
final class Typed {
    private Typed() {}

    static String text(Context ctx, String name) {
        return Optional.ofNullable(ctx.formParam(name)).orElse("");
    }

    static boolean ticked(Context ctx, String name) {
        return !text(ctx, name).isEmpty();
    }

    static int number(Context ctx, String name, int otherwise) {
        String text = text(ctx, name).strip();
        return text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : otherwise;
    }
}
