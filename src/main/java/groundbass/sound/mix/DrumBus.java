package groundbass.sound.mix;

import groundbass.signal.SampleRate;

/**
 * What the whole kit passes on its way into the mix: a compressor that follows its power, so that the kit holds together,
 * and an amplifier that rounds the tips off, {@code x / sqrt(1 + (x / k)^2)}. No stroke is held to a ceiling of its own.
 */
final class DrumBus {
    /** Where the compressor sets in: the power of a kit that plays on (by trial, no source). */
    private static final double THRESHOLD = 0.3;

    private static final double RISE_SECONDS = 0.02;
    private static final double FALL_SECONDS = 0.15;

    /** Samples between two looks at the power. */
    private static final int CONTROL = 16;

    /** Where rounding sets in (by trial, no source). */
    private static final double KNEE = 0.85;

    private DrumBus() {}

    /** @param side goes where the samples go: nothing moves for it */
    static void press(SampleRate rate, float[] samples, float[] side) {
        double rise = 1 - StrictMath.exp(-1 / (RISE_SECONDS * rate.hertz()));
        double fall = 1 - StrictMath.exp(-1 / (FALL_SECONDS * rate.hertz()));
        double power = 0;
        double gain = 1;
        double step = 0;
        for (int i = 0; i < samples.length; i++) {
            double x = samples[i];
            double over = x * x - power;
            power += over * (over > 0 ? rise : fall);
            if (i % CONTROL == 0) {
                step = (gain(power) - gain) / CONTROL;
            }
            gain += step;
            double pressed = gain / rounding(x * gain);
            samples[i] = (float) (x * pressed);
            side[i] = (float) (side[i] * pressed);
        }
    }

    /** Two decibels more go in where one more comes out, far above the threshold. */
    private static double gain(double power) {
        return 1 / Math.sqrt(Math.sqrt(1 + power / (THRESHOLD * THRESHOLD)));
    }

    private static double rounding(double x) {
        return Math.sqrt(1 + x * x / (KNEE * KNEE));
    }
}
