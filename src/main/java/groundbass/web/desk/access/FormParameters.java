package groundbass.web.desk.access;

import io.javalin.http.Context;
import java.util.Optional;

/** What somebody typed into a form; a field that is missing counts as empty. */
public final class FormParameters {
    private FormParameters() {}

    public static String text(Context ctx, String name) {
        return Optional.ofNullable(ctx.formParam(name)).orElse("");
    }

    public static boolean ticked(Context ctx, String name) {
        return !text(ctx, name).isEmpty();
    }

    public static int number(Context ctx, String name, int otherwise) {
        String text = text(ctx, name).strip();
        return text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : otherwise;
    }
}
