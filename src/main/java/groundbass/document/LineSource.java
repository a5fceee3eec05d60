package groundbass.document;

import java.util.Objects;

/**
 * A bass line as it was typed. The text is the source: whatever is printed or played is read from it each time.
 *
 * @param name what the educator calls it ("Main line", "Exercise 1"); may be empty
 * @param text line text
 */
public record LineSource(String name, String text) {
    public static final LineSource EMPTY = new LineSource("", "");

    public LineSource {
        Objects.requireNonNull(name);
        Objects.requireNonNull(text);
    }

    public boolean isBlank() {
        return text.isBlank();
    }
}
