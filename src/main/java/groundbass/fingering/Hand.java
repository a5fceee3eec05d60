package groundbass.fingering;

/**
 * How far a fretting hand reaches from index to little finger without shifting, in millimetres between fret wires (rule:
 * hand-reach). All
 * figures are common practice without a source: a person's own comfort, and pain above all, comes first.
 *
 * @param comfortable up to here at ease
 * @param stretched up to here with a stretch
 * @param widest beyond this nobody is asked to reach
 */
public record Hand(double comfortable, double stretched, double widest) {
    public static final Hand AVERAGE = new Hand(105, 130, 150);

    /** A beginner's or a small hand. */
    public static final Hand SMALL = new Hand(85, 110, 130);

    public static final int FINGERS = 4;

    /** What each finger reaches at ease from the index, as a share of {@link #comfortable}. */
    private static final double[] SHARE = {0, 0, 50 / 105.0, 75 / 105.0, 1};

    public Hand {
        if (!(comfortable > 0 && comfortable <= stretched && stretched <= widest)) {
            throw new IllegalArgumentException("limits rise: " + comfortable + ", " + stretched + ", " + widest);
        }
    }

    /** How far {@code finger}, 1 to 4, reaches from the index at ease, in millimetres. */
    double comfortable(int finger) {
        return SHARE[finger] * comfortable;
    }
}
