package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import java.util.Optional;

/** Which degree of the chord in force a note is; its own chord's, not that of the key. */
final class Degrees {
    private Degrees() {}

    /** Empty for a note outside of the chord, and where there is no chord. */
    static Optional<Degree> of(At at, Stage stage) {
        return stage.chord(at.bar(), at.note().onset())
                .filter(Chord.class::isInstance)
                .map(Chord.class::cast)
                .flatMap(chord -> stage.midi(at).flatMap(midi -> chord.degree(Math.floorMod(midi, 12))));
    }
}
