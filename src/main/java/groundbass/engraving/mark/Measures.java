package groundbass.engraving.mark;

/**
 * Thicknesses and distances in staff spaces. Most are the font's own (rule: font-thickness); for each of the
 * others its rule is named, or that it is common practice, no source.
 */
public final class Measures {
    /** rule: font-thickness. */
    public static final double STAFF_LINE = 0.13;

    /** rule: tab-lines: lighter than the staff, so that the numbers stand out. */
    public static final double TAB_LINE = 0.1;

    /** rule: font-thickness, stem-thickness. */
    public static final double STEM = 0.12;

    /** Between a number or head and the line of its slide; common practice, no source. */
    public static final double SLIDE_GAP = 0.2;

    /** What a slide needs between two numbers; common practice, no source. */
    public static final double SLIDE_ROOM = 2 * SLIDE_GAP + 0.8;

    /** rule: font-thickness, beam-stack. */
    public static final double BEAM = 0.5;

    /** rule: font-thickness, beam-stack: between the edges of two beams. */
    public static final double BEAM_GAP = 0.25;

    /** rule: font-thickness, ledger-line-reach. */
    public static final double LEDGER = 0.16;

    /** rule: font-thickness, ledger-line-reach: beyond each side of the head. */
    public static final double LEDGER_REACH = 0.4;

    /** rule: font-thickness. */
    public static final double THIN_BARLINE = 0.16;

    /** rule: font-thickness. */
    public static final double THICK_BARLINE = 0.5;

    /** rule: font-thickness, barline-thickness: the font names no distance between thin and thick. */
    public static final double BARLINE_GAP = 0.4;

    /** rule: font-thickness: between a repeat's dots and its line. */
    public static final double REPEAT_DOT_GAP = 0.16;

    /** rule: dot-size. */
    public static final double REPEAT_DOT = 0.4;

    /** rule: font-thickness. */
    public static final double TUPLET_BRACKET = 0.16;

    /** rule: font-thickness. */
    public static final double ENDING_LINE = 0.16;

    /** rule: font-thickness. */
    public static final double HAIRPIN = 0.16;

    /** rule: font-thickness: of slurs and ties. */
    public static final double CURVE_ENDS = 0.1;

    /** rule: font-thickness: of slurs and ties. */
    public static final double CURVE_MIDDLE = 0.22;

    /** rule: stem-length. */
    static final double STEM_LENGTH = 3.5;

    /** rule: font-outlines: of a black head; what columns are aligned by. */
    public static final double HEAD_WIDTH = 1.18;

    public static final double STAFF_HEIGHT = 4;

    /** rule: staff-size: between the lines of a tablature. */
    public static final double TAB_GAP = 1.5;

    /** Grace notes beside full ones; common practice, no source. */
    public static final double GRACE_SCALE = 0.66;

    private Measures() {}

    /** The height of a staff position, 0 being the bottom line and 8 the top, below the top line. */
    public static double y(int position) {
        return (8 - position) / 2.0;
    }

    /** The height of a string below the highest one's line. */
    public static double stringY(int string) {
        return (string - 1) * TAB_GAP;
    }
}
