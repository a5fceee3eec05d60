package groundbass.score;

import groundbass.theory.ChordSymbol;
import java.util.Objects;

/** A chord symbol and when it begins, from the start of its bar. */
public record ChordAt(Fraction at, ChordSymbol chord) {
    public ChordAt {
        Objects.requireNonNull(at);
        Objects.requireNonNull(chord);
    }
}
