package groundbass.listening;

import java.util.stream.IntStream;

/**
 * The highest point of a waveform between its samples too: fourfold oversampling as in ITU-R BS.1770-4, Annex 2, here
 * by a sine cardinal of 24 samples under a Kaiser window. Mutable.
 */
public final class TruePeak {
    private static final int PHASES = 4;
    private static final int TAPS = 24;

    /** Samples before a place that are read to tell how high the wave reaches behind it, and samples after it. */
    private static final int BEFORE = TAPS / 2 - 1;

    public static final int AFTER = TAPS / 2;
    private static final double KAISER = 7;

    /** No point between samples rises above the samples around it by more than this factor. */
    private static final float MOST_RISE;

    private static final float[][] FILTER = new float[PHASES - 1][TAPS];

    static {
        double most = 1;
        for (int phase = 1; phase < PHASES; phase++) {
            double sum = 0;
            for (int tap = 0; tap < TAPS; tap++) {
                double at = tap - (TAPS / 2.0 - 1) - (double) phase / PHASES;
                double value = cardinal(at) * kaiser(at / (TAPS / 2.0));
                FILTER[phase - 1][tap] = (float) value;
                sum += Math.abs(value);
            }
            most = Math.max(most, sum);
        }
        MOST_RISE = (float) most;
    }

    private final Channel[] channels;
    private float peak;

    /** The samples of the last block that still reach into the next. */
    private static final class Channel {
        private float[] samples = new float[TAPS - 1];
    }

    TruePeak(int channels) {
        this.channels =
                IntStream.range(0, channels).mapToObj(each -> new Channel()).toArray(Channel[]::new);
    }

    void add(float[][] block, int count) {
        for (int i = 0; i < channels.length; i++) {
            add(channels[i], block[i], count);
        }
    }

    private void add(Channel channel, float[] block, int count) {
        int kept = TAPS - 1;
        var samples = new float[kept + count];
        System.arraycopy(channel.samples, 0, samples, 0, kept);
        System.arraycopy(block, 0, samples, kept, count);
        for (int from = 0; from < count; from += TAPS) {
            look(samples, from, Math.min(count, from + TAPS));
        }
        System.arraycopy(samples, count, channel.samples, 0, kept);
    }

    /** Most stretches are too soft to hold the peak; they are not looked into. */
    private void look(float[] samples, int from, int to) {
        float highest = 0;
        for (int i = from; i < to + TAPS - 1; i++) {
            highest = Math.max(highest, Math.abs(samples[i]));
        }
        if (highest * MOST_RISE <= peak) {
            return;
        }
        peak = Math.max(peak, highest);
        for (int i = from; i < to; i++) {
            for (float[] phase : FILTER) {
                peak = Math.max(peak, Math.abs(between(samples, i, phase)));
            }
        }
    }

    private static float between(float[] samples, int from, float[] phase) {
        float sum = 0;
        for (int tap = 0; tap < TAPS; tap++) {
            sum += samples[from + tap] * phase[tap];
        }
        return sum;
    }

    /**
     * How high the wave reaches between this sample and the next, by four times as many points.
     *
     * @param at with {@link #AFTER} samples behind it and as many before it
     */
    public static float between(float[] samples, int at) {
        float highest = Math.max(Math.abs(samples[at]), Math.abs(samples[at + 1]));
        for (float[] phase : FILTER) {
            highest = Math.max(highest, Math.abs(between(samples, at - BEFORE, phase)));
        }
        return highest;
    }

    /** Of full scale; negative infinity for silence. */
    double decibels() {
        return 20 * StrictMath.log10(peak);
    }

    private static double cardinal(double x) {
        return x == 0 ? 1 : StrictMath.sin(Math.PI * x) / (Math.PI * x);
    }

    /** The window at {@code x} from -1 to 1: {@code I0(b sqrt(1 - x^2)) / I0(b)} (Kaiser 1974). */
    private static double kaiser(double x) {
        return bessel(KAISER * Math.sqrt(Math.max(0, 1 - x * x))) / bessel(KAISER);
    }

    /** The modified Bessel function of order zero by its series. */
    private static double bessel(double x) {
        double sum = 1;
        double term = 1;
        for (int k = 1; k < 40; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }
}
