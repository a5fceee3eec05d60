package groundbass.engraving.spacing;

import groundbass.engraving.mark.Measures;
import groundbass.score.Fraction;
import java.util.List;

/**
 * Everything that begins at one moment of a bar. Zero is the left edge of an undisplaced head.
 *
 * @param raised whether it sounds an octave higher than it is written, as the sign over it says
 * @param left, right how far the staff's marks reach from zero, left counted positive
 */
public record Column(
        Fraction onset,
        List<Cell> cells,
        List<Accidentals.Place> accidentals,
        double left,
        double right,
        boolean raised) {
    /** Where fret numbers and technique letters are centred. */
    public static final double MIDDLE = Measures.HEAD_WIDTH / 2;
}
