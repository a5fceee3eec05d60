package groundbass.remark;

import groundbass.text.Message;
import java.util.Objects;

/**
 * What was probably meant, to be typed where the remark stands.
 *
 * @param text for what the span covers, or for its last part: {@code 5} for the 58 of {@code E58}
 */
public record Retyping(String text, Message label) implements Suggestion {
    public Retyping {
        Objects.requireNonNull(text);
        Objects.requireNonNull(label);
    }

    /** One whose label is what would be typed. */
    public static Retyping of(String text) {
        return new Retyping(text, Message.of("remark.typed", text));
    }
}
