package groundbass.site;

import java.util.Objects;

/** A password that never shows itself in a log or an error. */
public record Secret(String value) {
    public Secret {
        Objects.requireNonNull(value);
    }

    @Override
    public String toString() {
        return "(secret)";
    }
}
