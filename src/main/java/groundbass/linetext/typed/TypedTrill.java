package groundbass.linetext.typed;

import groundbass.remark.Span;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * {@code trill}: in turn with the next note of the key, or {@code trill to 7} with that of a fret.
 *
 * @param fret the one that is named, if any
 */
public record TypedTrill(Span span, OptionalInt fret) {
    public TypedTrill {
        Objects.requireNonNull(span);
        Objects.requireNonNull(fret);
    }
}
