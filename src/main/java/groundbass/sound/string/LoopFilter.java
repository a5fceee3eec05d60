package groundbass.sound.string;

import groundbass.signal.SampleRate;

/**
 * What one turn of a string's loop leaves of each partial: the one-pole low-pass {@code y[n] = b x[n] + a y[n-1]}, set so
 * that the fundamental falls by 60 dB in T60 and partial k in {@code T60 / (1 + loss k^1.5)} (rule: loop-gain,
 * decay-of-partials).
 *
 * @param a how much of the last output comes again
 * @param b how much of the input passes
 */
public record LoopFilter(double a, double b) {
    /** The partial at which the law is met; between it and the fundamental the filter follows closely. */
    private static final int PARTIAL = 20;

    /** The highest frequency, as an angle, at which the partial is looked at. */
    private static final double HIGHEST = 2;

    /** A duller filter would take more of the period than its delay can give back. */
    private static final double DULLEST = 0.4;

    public static LoopFilter of(SampleRate rate, double hertz, double t60, double loss) {
        double w = rate.radians(hertz);
        double wHigh = Math.min(HIGHEST, w * PARTIAL);
        double partial = wHigh / w;
        double gain = gain(hertz, t60);
        double high = gain(hertz, t60 / (1 + loss * partial * StrictMath.sqrt(partial)));
        double a = pole(Math.max(DULLEST, high / gain), wHigh);
        return new LoopFilter(a, gain * (1 - a) / magnitude(a, w));
    }

    /** By how many samples the filter delays a frequency. */
    public double delay(double radians) {
        return StrictMath.atan2(a * StrictMath.sin(radians), 1 - a * StrictMath.cos(radians)) / radians;
    }

    private static double gain(double hertz, double t60) {
        return StrictMath.pow(10, -3 / (hertz * t60));
    }

    /** The pole for which the low-pass has magnitude {@code ratio} at {@code w}, from its squared magnitude. */
    private static double pole(double ratio, double w) {
        double squared = ratio * ratio;
        double p = 1 - squared * StrictMath.cos(w);
        double q = 1 - squared;
        return q < 1e-12 ? 0 : (p - StrictMath.sqrt(Math.max(0, p * p - q * q))) / q;
    }

    /** Of the low-pass with gain one at zero. */
    private static double magnitude(double a, double w) {
        return (1 - a) / StrictMath.sqrt(1 - 2 * a * StrictMath.cos(w) + a * a);
    }
}
