package groundbass.sound.mix;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.OnePole;

/**
 * A small, damped room around what is played: eight delays that feed one another by a matrix that keeps power (a feedback
 * delay network after Jot and Chaigne 1991, from memory), heard by two ears that agree on nothing. rule: room-figures.
 */
final class Room {
    /** To -60 dB; what is high falls sooner. */
    static final double T60 = 0.42;

    private static final double DULL_HERTZ = 5_000;

    /** Below this a room only rumbles. */
    private static final double LOWEST_HERTZ = 150;

    private static final double LATE_SECONDS = 0.006;

    /** Samples, prime to one another, from 13 to 40 ms: no echo stands out. */
    private static final int[] LENGTHS = {571, 709, 887, 1_033, 1_187, 1_381, 1_567, 1_777};

    private static final int COUNT = LENGTHS.length;
    private static final float[] LEFT = {1, -1, 1, -1, 1, -1, 1, -1};
    private static final float[] RIGHT = {1, 1, -1, -1, 1, 1, -1, -1};

    private final float[][] lines = new float[COUNT][];
    private final float[] gains = new float[COUNT];
    private final OnePole[] dull = new OnePole[COUNT];
    private final int[] at = new int[COUNT];
    private final OnePole low;
    private final float[] late;
    private int lateAt;
    private final float[] out = new float[COUNT];

    Room(SampleRate rate) {
        for (int i = 0; i < COUNT; i++) {
            lines[i] = new float[LENGTHS[i]];
            gains[i] = (float) StrictMath.pow(rate.decay(T60), LENGTHS[i]);
            dull[i] = new OnePole(rate, DULL_HERTZ);
        }
        this.low = new OnePole(rate, LOWEST_HERTZ);
        this.late = new float[(int) rate.at(LATE_SECONDS)];
    }

    /** Adds what comes back from the walls. */
    void add(float[] in, float[] left, float[] right, int count) {
        for (int i = 0; i < count; i++) {
            float early = late[lateAt];
            late[lateAt] = (float) low.high(in[i]);
            lateAt = (lateAt + 1) % late.length;
            float l = 0;
            float r = 0;
            for (int k = 0; k < COUNT; k++) {
                out[k] = gains[k] * (float) dull[k].low(lines[k][at[k]]);
                l += LEFT[k] * out[k];
                r += RIGHT[k] * out[k];
            }
            mix();
            for (int k = 0; k < COUNT; k++) {
                lines[k][at[k]] = early + out[k];
                at[k] = (at[k] + 1) % LENGTHS[k];
            }
            left[i] += l;
            right[i] += r;
        }
    }

    /** The fast Hadamard transform, by which power stays. */
    private void mix() {
        for (int span = 1; span < COUNT; span *= 2) {
            for (int i = 0; i < COUNT; i += 2 * span) {
                for (int k = i; k < i + span; k++) {
                    float a = out[k];
                    float b = out[k + span];
                    out[k] = a + b;
                    out[k + span] = a - b;
                }
            }
        }
        float even = (float) (1 / StrictMath.sqrt(COUNT));
        for (int k = 0; k < COUNT; k++) {
            out[k] *= even;
        }
    }
}
