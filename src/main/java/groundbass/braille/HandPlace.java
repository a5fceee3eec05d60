package groundbass.braille;

import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import java.util.OptionalInt;

/**
 * Where the fretting hand is said to be: the string where it changes, the fret where the hand moves
 * (rule: braille-string-signs, braille-fret-signs). Mutable; one for a line.
 */
final class HandPlace {
    /** Frets that a hand covers on either side of the last one that was told. */
    private static final int REACH = 3;

    private final BrailleKey legend;
    private OptionalInt string = OptionalInt.empty();
    private OptionalInt fret = OptionalInt.empty();

    HandPlace(BrailleKey legend) {
        this.legend = legend;
    }

    void forget() {
        string = OptionalInt.empty();
        fret = OptionalInt.empty();
    }

    /** What stands before a note in the middle of a row. */
    Cells before(Note note) {
        var position = needsFret(note) ? fret(note) : Cells.NONE;
        boolean same = string.isPresent() && string.getAsInt() == note.string();
        return same ? position : position.plus(string(note));
    }

    /** What stands before the first note of a row: all of it, so that one can begin at any row. */
    Cells afresh(Note note) {
        return (isStopped(note) ? fret(note) : Cells.NONE).plus(string(note));
    }

    /** The string of a note that is written as an interval; what was told before goes on to hold. */
    Cells beside(Note note) {
        return (note.ornaments().harmonic().isPresent() ? fret(note) : Cells.NONE).plus(string(note));
    }

    void plays(Note note) {
        if (needsFret(note)) {
            fret = OptionalInt.of(((Fretted) note.place()).fret());
        }
        string = OptionalInt.of(note.string());
    }

    /** A harmonic sounds elsewhere than it is touched, so that its pitch does not tell its fret. */
    private boolean needsFret(Note note) {
        if (!isStopped(note)) {
            return false;
        }
        int at = ((Fretted) note.place()).fret();
        return note.ornaments().harmonic().isPresent() || fret.isEmpty() || Math.abs(at - fret.getAsInt()) > REACH;
    }

    private static boolean isStopped(Note note) {
        return note.place() instanceof Fretted fretted && fretted.fret() > 0;
    }

    private Cells fret(Note note) {
        return note.place() instanceof Fretted fretted && fretted.fret() > 0 ? legend.fret(fretted.fret()) : Cells.NONE;
    }

    private Cells string(Note note) {
        return legend.string(note.string());
    }
}
