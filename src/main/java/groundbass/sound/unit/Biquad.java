package groundbass.sound.unit;

import groundbass.signal.SampleRate;

/**
 * A filter of the second order, {@code y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]}, with the
 * coefficients of the Audio EQ Cookbook (Bristow-Johnson; W3C note of 2021, from memory).
 */
public final class Biquad {
    private final double b0;
    private final double b1;
    private final double b2;
    private final double a1;
    private final double a2;
    private double s1;
    private double s2;

    private Biquad(double b0, double b1, double b2, double a0, double a1, double a2) {
        this.b0 = b0 / a0;
        this.b1 = b1 / a0;
        this.b2 = b2 / a0;
        this.a1 = a1 / a0;
        this.a2 = a2 / a0;
    }

    public static Biquad lowPass(SampleRate rate, double hertz, double q) {
        double w = rate.radians(hertz);
        double cos = StrictMath.cos(w);
        double alpha = StrictMath.sin(w) / (2 * q);
        return new Biquad((1 - cos) / 2, 1 - cos, (1 - cos) / 2, 1 + alpha, -2 * cos, 1 - alpha);
    }

    public static Biquad highPass(SampleRate rate, double hertz, double q) {
        double w = rate.radians(hertz);
        double cos = StrictMath.cos(w);
        double alpha = StrictMath.sin(w) / (2 * q);
        return new Biquad((1 + cos) / 2, -(1 + cos), (1 + cos) / 2, 1 + alpha, -2 * cos, 1 - alpha);
    }

    /** So many decibels more or less about a frequency. */
    public static Biquad peaking(SampleRate rate, double hertz, double q, double decibels) {
        double w = rate.radians(hertz);
        double cos = StrictMath.cos(w);
        double alpha = StrictMath.sin(w) / (2 * q);
        double a = StrictMath.pow(10, decibels / 40);
        return new Biquad(1 + alpha * a, -2 * cos, 1 - alpha * a, 1 + alpha / a, -2 * cos, 1 - alpha / a);
    }

    /** This one and another behind it, in place: both together take hardly longer than one. */
    public void pass(Biquad other, float[] samples, int count) {
        double one = s1;
        double two = s2;
        double three = other.s1;
        double four = other.s2;
        for (int i = 0; i < count; i++) {
            double x = samples[i];
            double y = b0 * x + one;
            one = b1 * x + two - a1 * y;
            two = b2 * x - a2 * y;
            double z = other.b0 * y + three;
            three = other.b1 * y + four - other.a1 * z;
            four = other.b2 * y - other.a2 * z;
            samples[i] = (float) z;
        }
        s1 = one;
        s2 = two;
        other.s1 = three;
        other.s2 = four;
    }
}
