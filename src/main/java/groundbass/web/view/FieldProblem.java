package groundbass.web.view;

import groundbass.text.Message;
import java.util.Objects;

/** What is wrong with one field of a form. {@code field} is the field's name in the form. */
public record FieldProblem(String field, Message message) {
    public FieldProblem {
        Objects.requireNonNull(field);
        Objects.requireNonNull(message);
    }

    public static FieldProblem of(String field, String key, Object... args) {
        return new FieldProblem(field, Message.of(key, args));
    }
}
