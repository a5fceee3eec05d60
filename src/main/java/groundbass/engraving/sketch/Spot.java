package groundbass.engraving.sketch;

import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.Column;
import groundbass.score.Passage;

/**
 * A cell in its place on a system.
 *
 * @param column everything that begins at its moment
 */
public record Spot(Cell cell, Column column, BarSpan span, double x) {
    public Passage owner() {
        return cell.owner();
    }

    /** The middle of an undisplaced head: where numbers and letters are centred. */
    public double middle() {
        return x + Column.MIDDLE;
    }

    public double stemLeft() {
        return x + cell.stemDx();
    }

    /** Of the head nearest the stem's far end. */
    public int outerPosition() {
        return cell.up() ? cell.highest() : cell.lowest();
    }

    /** Of the head nearest the stem's root. */
    public int innerPosition() {
        return cell.up() ? cell.lowest() : cell.highest();
    }
}
