package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.theory.Pitch;
import java.util.Optional;

/**
 * What of a note sounds in one bar.
 *
 * @param noteBar the number of the bar that the note begins in
 * @param from, to within this bar
 * @param fromBefore whether it came in over the bar line
 * @param goesOn whether it leaves over the next
 */
record Part(Note note, int noteBar, Pitch pitch, Fraction from, Fraction to, boolean fromBefore, boolean goesOn) {
    /** This part's head at a shape that runs from {@code start} to {@code end}; its sign is decided later. */
    Head head(Fraction start, Fraction end) {
        return new Head(
                note, noteBar, pitch, Optional.empty(), fromBefore || start.isAfter(from), goesOn || end.isBefore(to));
    }

    boolean spans(Part that) {
        return from.equals(that.from) && to.equals(that.to);
    }

    boolean overlaps(Part that) {
        return from.isBefore(that.to) && that.from.isBefore(to);
    }
}
