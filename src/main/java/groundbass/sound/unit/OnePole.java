package groundbass.sound.unit;

import groundbass.signal.SampleRate;

/** The low-pass {@code y[n] = (1 - a) x[n] + a y[n-1]} with {@code a = exp(-2 pi f / rate)}. */
public final class OnePole {
    private final double a;
    private final double b;
    private double y;

    public OnePole(SampleRate rate, double hertz) {
        this.a = StrictMath.exp(-rate.radians(hertz));
        this.b = 1 - a;
    }

    public double low(double x) {
        y = b * x + a * y;
        return y;
    }

    /** Two in one go: each of them waits for its own last value, and meanwhile the other is reckoned. */
    public static void low(OnePole one, float[] first, OnePole other, float[] second, int count) {
        double y = one.y;
        double z = other.y;
        for (int i = 0; i < count; i++) {
            y = one.b * first[i] + one.a * y;
            z = other.b * second[i] + other.a * z;
            first[i] = (float) y;
            second[i] = (float) z;
        }
        one.y = y;
        other.y = z;
    }

    /** What the low-pass leaves out. */
    public double high(double x) {
        return x - low(x);
    }
}
