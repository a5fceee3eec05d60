package groundbass.performance;

import groundbass.theory.ChordSymbol;
import java.util.Objects;

/** A chord symbol over the stretch of one bar for which it holds. */
public record TimedChord(ChordSymbol chord, Origin origin, When when) {
    public TimedChord {
        Objects.requireNonNull(chord);
        Objects.requireNonNull(origin);
        Objects.requireNonNull(when);
    }
}
