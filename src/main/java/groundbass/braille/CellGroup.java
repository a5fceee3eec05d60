package groundbass.braille;

/**
 * Cells that no row parts.
 *
 * @param gap what stands between it and what comes before it in its bar
 * @param plain in the middle of a row
 * @param fresh where it has the first note of a row; the same where it has none
 * @param sounds whether it has a note
 * @param beat whether a beat begins with it, so that a long bar is best divided before it
 */
record CellGroup(Gap gap, Cells plain, Cells fresh, boolean sounds, boolean beat) {
    /** Between two units of a bar. */
    enum Gap {
        /** Nothing; where a row ends between them, a music hyphen (rule: braille-divided-bar). */
        JOINED,
        /** A blank cell, or the end of a row. */
        BLANK,
        /** Nothing, and nothing where a row ends: inside a word wider than a row, behind an in-accord and the end of a bar. */
        SPLIT
    }

    static CellGroup silent(Gap gap, Cells cells, boolean beat) {
        return new CellGroup(gap, cells, cells, false, beat);
    }

    Cells cells(boolean first) {
        return first ? fresh : plain;
    }

    CellGroup with(Gap newGap) {
        return new CellGroup(newGap, plain, fresh, sounds, beat);
    }

    CellGroup before(Cells cells) {
        return new CellGroup(gap, cells.apart(plain), cells.apart(fresh), sounds, beat);
    }

    /** Behind a sign that nothing runs into. */
    CellGroup led(Cells sign) {
        return new CellGroup(gap, sign.plus(plain), sign.plus(fresh), sounds, beat);
    }

    /** Whether many words end with it, which a blank follows. */
    boolean endsInWords() {
        return plain.patterns().endsWith(BrailleSigns.WORD.patterns());
    }

    CellGroup after(Cells cells) {
        return new CellGroup(gap, plain.plus(cells), fresh.plus(cells), sounds, beat);
    }
}
