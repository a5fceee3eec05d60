package groundbass.engraving;

import groundbass.score.Passage;

/** A cell in its place on a system. */
record Spot(Cell cell, BarSpan span, double x) {
    Passage owner() {
        return cell.owner();
    }

    /** The middle of an undisplaced head: where numbers and letters are centred. */
    double middle() {
        return x + Column.MIDDLE;
    }

    /** Everything that begins at its moment. */
    Column column() {
        return span.bar().columns().stream()
                .filter(column -> column.cells().contains(cell))
                .findFirst()
                .orElseThrow();
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
