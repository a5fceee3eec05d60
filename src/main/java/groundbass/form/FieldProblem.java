package groundbass.form;

import java.util.List;
import java.util.Objects;

/**
 * What is wrong with one field of what somebody typed.
 *
 * @param field the field's name in the form, for the message to stand beside it
 * @param key   a key of the message bundle
 * @param args  what the message is filled with
 */
public record FieldProblem(String field, String key, List<Object> args) {
    public FieldProblem {
        Objects.requireNonNull(field);
        Objects.requireNonNull(key);
        args = List.copyOf(args);
    }

    public static FieldProblem of(String field, String key, Object... args) {
        return new FieldProblem(field, key, List.of(args));
    }
}
