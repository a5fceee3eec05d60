package groundbass.midi;

import groundbass.score.Fraction;

/** Moments as MIDI counts them: 480 to a quarter, which divides by all usual tuplets and swing ratios. */
final class Ticks {
    static final int PER_QUARTER = 480;
    private static final Fraction HALF = Fraction.of(1, 2);

    private Ticks() {}

    /** The nearest tick to a moment in whole notes. */
    static long of(Fraction moment) {
        return moment.times(4L * PER_QUARTER).plus(HALF).floor();
    }

    /** The nearest tick to a moment in whole notes. */
    static long of(double moment) {
        return Math.round(moment * 4 * PER_QUARTER);
    }
}
