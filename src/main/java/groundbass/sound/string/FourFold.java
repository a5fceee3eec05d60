package groundbass.sound.string;

import groundbass.signal.SampleRate;

/**
 * Four samples where one came, on a cubic through four of them (Lagrange): for what is so soft, or so low, that a quarter
 * of the samples is enough to make it. What comes out lies two samples of those that go in behind them.
 */
final class FourFold {
    static final int TIMES = 4;

    /** Weights of the four samples around a point a quarter behind the second; a half is even. */
    private static final float BEFORE = -0.0546875f;

    private static final float NEAR = 0.8203125f;
    private static final float FAR = 0.2734375f;
    private static final float AFTER = -0.0390625f;
    private static final float HALF_OUTER = -0.0625f;
    private static final float HALF_INNER = 0.5625f;

    /** Up to here a loop of so few samples holds a few partials, in hertz. */
    private static final double HIGHEST = 600;

    private float a;
    private float b;
    private float c;

    /** A quarter as many samples a second. */
    static SampleRate slower(SampleRate rate) {
        return new SampleRate(rate.hertz() / TIMES);
    }

    /** Whether a string of this pitch can be made so. */
    static boolean carries(double hertz) {
        return hertz <= HIGHEST;
    }

    void rest() {
        a = 0;
        b = 0;
        c = 0;
    }

    /** Puts four samples for each of {@code count}. */
    void stretch(float[] few, int count, float[] many) {
        for (int i = 0; i < count; i++) {
            float d = few[i];
            many[TIMES * i] = b;
            many[TIMES * i + 1] = BEFORE * a + NEAR * b + FAR * c + AFTER * d;
            many[TIMES * i + 2] = HALF_OUTER * (a + d) + HALF_INNER * (b + c);
            many[TIMES * i + 3] = AFTER * a + FAR * b + NEAR * c + BEFORE * d;
            a = b;
            b = c;
            c = d;
        }
    }
}
