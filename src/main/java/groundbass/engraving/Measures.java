package groundbass.engraving;

/**
 * Thicknesses and distances in staff spaces. Those marked [Bravura] are the font's own engravingDefaults (version
 * 1.392); the others are common practice without a source.
 */
final class Measures {
    /** [Bravura] */
    static final double STAFF_LINE = 0.13;

    /** [Bravura] */
    static final double STEM = 0.12;

    /** [Bravura] */
    static final double BEAM = 0.5;

    /** [Bravura] between the edges of two beams. */
    static final double BEAM_GAP = 0.25;

    /** [Bravura] */
    static final double LEDGER = 0.16;

    /** [Bravura] beyond each side of the head. */
    static final double LEDGER_REACH = 0.4;

    /** [Bravura] */
    static final double THIN_BARLINE = 0.16;

    /** [Bravura] */
    static final double THICK_BARLINE = 0.5;

    /** [Bravura] between two thin lines; between thin and thick as well, for which the font names no distance. */
    static final double BARLINE_GAP = 0.4;

    /** [Bravura] between a repeat's dots and its line. */
    static final double REPEAT_DOT_GAP = 0.16;

    static final double REPEAT_DOT = 0.4;

    /** [Bravura] */
    static final double TUPLET_BRACKET = 0.16;

    /** [Bravura] */
    static final double ENDING_LINE = 0.16;

    /** [Bravura] of slurs and ties. */
    static final double CURVE_ENDS = 0.1;

    /** [Bravura] of slurs and ties. */
    static final double CURVE_MIDDLE = 0.22;

    /** An octave; all handbooks. */
    static final double STEM_LENGTH = 3.5;

    /** Of a black head in this font; what columns are aligned by. */
    static final double HEAD_WIDTH = 1.18;

    static final double STAFF_HEIGHT = 4;

    /** Between the lines of a tablature. */
    static final double TAB_GAP = 1.5;

    static final double GRACE_SCALE = 0.66;

    private Measures() {}

    /** The height of a staff position, 0 being the bottom line and 8 the top, below the top line. */
    static double y(int position) {
        return (8 - position) / 2.0;
    }

    /** The height of a string below the highest one's line. */
    static double stringY(int string) {
        return (string - 1) * TAB_GAP;
    }
}
