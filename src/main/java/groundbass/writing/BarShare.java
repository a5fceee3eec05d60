package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.theory.Pitch;
import groundbass.writing.Head.Grace;
import java.util.Optional;

/**
 * What of a note sounds in one bar.
 *
 * @param noteBar the number of the bar that the note begins in
 * @param from, to within this bar
 * @param fromBefore whether it came in over the bar line
 * @param goesOn whether it leaves over the next
 */
record BarShare(
        Note note, int noteBar, Spelled spelled, Fraction from, Fraction to, boolean fromBefore, boolean goesOn) {
    /** This part's head at a shape that runs from {@code start} to {@code end}; its sign is decided later. */
    Head head(Fraction start, Fraction end) {
        boolean tiedFrom = fromBefore || start.isAfter(from);
        var grace = spelled.grace().filter(pitch -> !tiedFrom).map(pitch -> new Grace(pitch, Optional.empty()));
        boolean tiedTo = goesOn || end.isBefore(to);
        return new Head(note, noteBar, pitch(), Optional.empty(), grace, Optional.empty(), tiedFrom, tiedTo);
    }

    Pitch pitch() {
        return spelled.pitch();
    }

    boolean spans(BarShare that) {
        return from.equals(that.from) && to.equals(that.to);
    }

    boolean overlaps(BarShare that) {
        return from.isBefore(that.to) && that.from.isBefore(to);
    }
}
