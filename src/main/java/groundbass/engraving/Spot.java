package groundbass.engraving;

import groundbass.score.Passage;

/**
 * A cell in its place on a system.
 *
 * @param column everything that begins at its moment
 */
record Spot(Cell cell, Column column, BarSpan span, double x) {
    Passage owner() {
        return cell.owner();
    }

    /** The middle of an undisplaced head: where numbers and letters are centred. */
    double middle() {
        return x + Column.MIDDLE;
    }

    double stemLeft() {
        return x + cell.stemDx();
    }

    /** Of the head nearest the stem's far end. */
    int outerPosition() {
        return cell.up() ? cell.highest() : cell.lowest();
    }

    /** Of the head nearest the stem's root. */
    int innerPosition() {
        return cell.up() ? cell.lowest() : cell.highest();
    }
}
