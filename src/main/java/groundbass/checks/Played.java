package groundbass.checks;

import groundbass.performance.TimedBar;
import groundbass.performance.TimedNote;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place.Fretted;
import java.util.OptionalInt;

/**
 * A written note at the first time that it is played.
 *
 * @param index its place in {@link Evidence#notes()}
 */
record Played(int index, NoteAt at, TimedBar bar, TimedNote timed) {
    InForce inForce() {
        return bar.inForce();
    }

    /** When it begins as written, before swing. */
    Fraction onset() {
        return bar.moment(note().onset());
    }

    /** When it ends as written, before swing. */
    Fraction end() {
        return bar.moment(note().end());
    }

    Note note() {
        return timed.note();
    }

    int string() {
        return note().string();
    }

    /** When it begins, in seconds. */
    double start() {
        return timed.when().start();
    }

    OptionalInt fret() {
        return note().place() instanceof Fretted fretted ? OptionalInt.of(fretted.fret()) : OptionalInt.empty();
    }

    /** Whether a finger of the fretting hand stops the string. */
    boolean isStopped() {
        return fret().orElse(0) > 0;
    }
}
