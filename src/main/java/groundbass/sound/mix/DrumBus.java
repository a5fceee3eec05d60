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

    /** Samples whose power is looked at as one. */
    private static final int CONTROL = 16;

    /** Where rounding sets in (by trial, no source). */
    private static final float KNEE = 0.85f;

    private DrumBus() {}

    /** @param side goes where the samples go: nothing moves for it */
    static void press(SampleRate rate, float[] samples, float[] side) {
        float[] gains = gains(rate, samples);
        for (int i = 0; i < samples.length; i++) {
            float x = samples[i] * gains[i] * (1 / KNEE);
            float pressed = gains[i] / (float) Math.sqrt(1 + x * x);
            samples[i] *= pressed;
            side[i] *= pressed;
        }
    }

    /** What the compressor multiplies each sample by. */
    private static float[] gains(SampleRate rate, float[] samples) {
        double rise = 1 - StrictMath.exp(-CONTROL / (RISE_SECONDS * rate.hertz()));
        double fall = 1 - StrictMath.exp(-CONTROL / (FALL_SECONDS * rate.hertz()));
        var gains = new float[samples.length];
        double power = 0;
        float gain = 1;
        for (int from = 0; from < samples.length; from += CONTROL) {
            int to = Math.min(samples.length, from + CONTROL);
            double over = power(samples, from, to) - power;
            power += over * (over > 0 ? rise : fall);
            float step = (gain(power) - gain) / CONTROL;
            for (int i = from; i < to; i++) {
                gains[i] = gain + (i - from + 1) * step;
            }
            gain += CONTROL * step;
        }
        return gains;
    }

    private static double power(float[] samples, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += samples[i] * samples[i];
        }
        return sum / (to - from);
    }

    /** Two decibels more go in where one more comes out, far above the threshold. */
    private static float gain(double power) {
        return (float) (1 / Math.sqrt(Math.sqrt(1 + power / (THRESHOLD * THRESHOLD))));
    }
}
