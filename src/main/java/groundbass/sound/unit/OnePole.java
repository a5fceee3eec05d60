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

    /** What the low-pass leaves out. */
    public double high(double x) {
        return x - low(x);
    }
}
