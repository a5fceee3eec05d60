package groundbass.braille;

import groundbass.theory.Pitch;
import java.util.Optional;

/** Which note needs a mark of its octave, as the notes are read one after the other. Mutable; one for a line. */
final class Melody {
    private Optional<Pitch> last = Optional.empty();

    /** Something stands before the next note that asks for its mark. */
    void interrupt() {
        last = Optional.empty();
    }

    /**
     * After a step of a second or third never, of a fourth or fifth where it leads into another octave, after a larger
     * one always (rule: braille-octave-marks).
     */
    boolean needsMark(Pitch next) {
        if (last.isEmpty()) {
            return true;
        }
        int steps = Math.abs(next.diatonicIndex() - last.get().diatonicIndex());
        return steps > 4 || steps > 2 && next.octave() != last.get().octave();
    }

    void goesTo(Pitch pitch) {
        last = Optional.of(pitch);
    }
}
