package groundbass.document;

import java.util.Objects;

/**
 * The drums under the line: a drum grid as typed, or where that is blank a ready one by its name; both blank: the
 * program chooses by meter and feel.
 */
public record GrooveSource(String name, String text) {
    public static final GrooveSource CHOSEN_BY_METER = new GrooveSource("", "");

    public GrooveSource {
        Objects.requireNonNull(name);
        Objects.requireNonNull(text);
    }
}
