package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place.Fretted;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * A written note at the first time that it is played; for whoever judges the written line by how it sounds.
 *
 * @param index its place in {@link Performance#firstPlaying()}
 */
public record Played(int index, NoteAt at, TimedBar bar, TimedNote timed) {
    public Played {
        Objects.requireNonNull(at);
        Objects.requireNonNull(bar);
        Objects.requireNonNull(timed);
    }

    public InForce inForce() {
        return bar.inForce();
    }

    public Note note() {
        return timed.note();
    }

    public int string() {
        return note().string();
    }

    /** When it begins as written, before swing; whole notes from the start of the count-in. */
    public Fraction onset() {
        return bar.moment(note().onset());
    }

    /** When it ends as written, before swing. */
    public Fraction end() {
        return bar.moment(note().end());
    }

    /** When it begins to sound, in seconds from the start of the count-in. */
    public double start() {
        return timed.when().start();
    }

    /** Empty for a dead note. */
    public OptionalInt fret() {
        return note().place() instanceof Fretted fretted ? OptionalInt.of(fretted.fret()) : OptionalInt.empty();
    }

    /** Whether a finger of the fretting hand stops the string. */
    public boolean isStopped() {
        return fret().orElse(0) > 0;
    }
}
