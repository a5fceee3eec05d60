package groundbass.web.desk.access;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Optional;
import java.util.function.Function;

/** What somebody typed into a form; a field that is missing counts as empty. */
public final class FormParameters {
    private static final int LAST_YEAR = 9999;

    private FormParameters() {}

    public static String text(Context ctx, String name) {
        return Optional.ofNullable(ctx.formParam(name)).orElse("");
    }

    public static boolean ticked(Context ctx, String name) {
        return !text(ctx, name).isEmpty();
    }

    /**
     * A day or an hour, up to the year 9999 as pages name it.
     *
     * @param parse reads it as ISO 8601 writes it
     * @return empty where something else was typed
     */
    public static <T extends TemporalAccessor> Optional<T> time(String text, Function<String, T> parse) {
        try {
            return Optional.of(parse.apply(text.strip())).filter(time -> time.get(ChronoField.YEAR) <= LAST_YEAR);
        } catch (DateTimeException noTime) {
            return Optional.empty();
        }
    }

    public static int number(Context ctx, String name, int otherwise) {
        String text = text(ctx, name).strip();
        return text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : otherwise;
    }
}
