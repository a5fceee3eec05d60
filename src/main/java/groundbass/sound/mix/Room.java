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
    /** The sums that are heard: with every second delay turned over, and with every second pair. */
    private static final int LEFT = 1;

    private static final int RIGHT = 2;

    /** Shorter than every delay, so that nothing of a block comes back within it. */
    private static final int BLOCK = 256;

    /** By which the power stays that the sums of eight would multiply. */
    private static final float EVEN = (float) (1 / StrictMath.sqrt(COUNT));

    private final DelayLine[] walls = new DelayLine[COUNT];
    private final float[] gains = new float[COUNT];
    private final OnePole[] dull = new OnePole[COUNT];
    private final OnePole low;
    private final DelayLine late;
    private final float[] sent = new float[BLOCK];
    private final float[] early = new float[BLOCK];
    private final float[][] out = new float[COUNT][BLOCK];

    Room(SampleRate rate) {
        for (int k = 0; k < COUNT; k++) {
            walls[k] = new DelayLine(LENGTHS[k]);
            gains[k] = (float) (EVEN * StrictMath.pow(rate.decay(T60), LENGTHS[k]));
            dull[k] = new OnePole(rate, DULL_HERTZ);
        }
        this.low = new OnePole(rate, LOWEST_HERTZ);
        this.late = new DelayLine((int) rate.at(LATE_SECONDS));
    }

    /** Adds what comes back from the walls. */
    void add(float[] in, float[] left, float[] right, int count) {
        for (int from = 0; from < count; from += BLOCK) {
            int length = Math.min(BLOCK, count - from);
            send(in, from, length);
            for (int k = 0; k < COUNT; k++) {
                walls[k].take(out[k], length);
            }
            for (int k = 0; k < COUNT; k += 2) {
                OnePole.low(dull[k], out[k], dull[k + 1], out[k + 1], length);
            }
            mix(length);
            add(out[LEFT], 1 / EVEN, left, from, length);
            add(out[RIGHT], 1 / EVEN, right, from, length);
            for (int k = 0; k < COUNT; k++) {
                add(early, 1, out[k], 0, length);
                walls[k].put(out[k], length);
            }
        }
    }

    /** What reaches the walls now was played a moment ago. */
    private void send(float[] in, int from, int length) {
        late.take(early, length);
        for (int i = 0; i < length; i++) {
            sent[i] = (float) low.high(in[from + i]);
        }
        late.put(sent, length);
    }

    private static void add(float[] samples, float gain, float[] to, int from, int length) {
        for (int i = 0; i < length; i++) {
            to[from + i] += gain * samples[i];
        }
    }

    /** The fast Hadamard transform; with what {@link #EVEN} takes away, power stays. */
    private void mix(int length) {
        for (int k = 0; k < COUNT; k++) {
            weaken(out[k], gains[k], length);
        }
        for (int span = 1; span < COUNT; span *= 2) {
            for (int i = 0; i < COUNT; i += 2 * span) {
                for (int k = i; k < i + span; k++) {
                    cross(out[k], out[k + span], length);
                }
            }
        }
    }

    private static void weaken(float[] samples, float gain, int length) {
        for (int i = 0; i < length; i++) {
            samples[i] *= gain;
        }
    }

    private static void cross(float[] one, float[] other, int length) {
        for (int i = 0; i < length; i++) {
            float a = one[i];
            float b = other[i];
            one[i] = a + b;
            other[i] = a - b;
        }
    }
}
