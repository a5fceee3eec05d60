package groundbass.score;

import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which chord holds where in a line: the last one written, over bar lines too, until the next or "no chord". */
public final class Harmony {
    private final List<Bar> bars;
    private final List<Optional<ChordSymbol>> heldInto = new ArrayList<>();

    public Harmony(Line line) {
        this.bars = line.bars();
        var holds = Optional.<ChordSymbol>empty();
        for (var bar : bars) {
            heldInto.add(holds);
            holds = until(bar, bar.to(), holds);
        }
    }

    /** @param index of the bar in the line, from 0 */
    public Optional<Chord> at(int index, Fraction at) {
        return until(bars.get(index), at, heldInto.get(index))
                .filter(Chord.class::isInstance)
                .map(Chord.class::cast);
    }

    private static Optional<ChordSymbol> until(Bar bar, Fraction at, Optional<ChordSymbol> before) {
        var now = before;
        for (var chord : bar.chords()) {
            now = chord.at().isAfter(at) ? now : Optional.of(chord.chord());
        }
        return now;
    }
}
