package groundbass.sound.mix;

import groundbass.signal.SampleRate;
import java.util.ArrayDeque;

/**
 * Holds the tops of a sound down, as a drummer's recording is pressed: the gain falls within a millisecond and a half
 * before a top and comes back within a twentieth of a second, so that the wave keeps its shape. Without it a few snare
 * strokes would decide how loud everything else can be.
 */
final class Compressor {
    private static final double AHEAD_SECONDS = 0.0015;

    /** In which the gain comes back by two thirds (by ear, no source). */
    private static final double RETURN_SECONDS = 0.05;

    private Compressor() {}

    /** Changes {@code samples} so that none passes {@code ceiling}. */
    static void press(SampleRate rate, float[] samples, float ceiling) {
        int ahead = (int) rate.at(AHEAD_SECONDS);
        float[] gain = lowest(samples, ceiling, ahead);
        double back = 1 - StrictMath.exp(-1 / (RETURN_SECONDS * rate.hertz()));
        float now = 1;
        for (int i = 0; i < gain.length; i++) {
            now = Math.min(gain[i], now + (float) ((1 - now) * back));
            gain[i] = now;
        }
        multiply(samples, gain, ahead);
    }

    /** The lowest gain that any sample within {@code reach} needs. */
    private static float[] lowest(float[] samples, float ceiling, int reach) {
        var lowest = new float[samples.length];
        var candidates = new ArrayDeque<Integer>();
        for (int i = 0; i < samples.length + reach; i++) {
            if (i < samples.length) {
                while (!candidates.isEmpty() && Math.abs(samples[candidates.peekLast()]) <= Math.abs(samples[i])) {
                    candidates.removeLast();
                }
                candidates.addLast(i);
            }
            if (i >= reach) {
                while (candidates.peekFirst() < i - 2 * reach) {
                    candidates.removeFirst();
                }
                float highest = Math.abs(samples[candidates.peekFirst()]);
                lowest[i - reach] = highest > ceiling ? ceiling / highest : 1;
            }
        }
        return lowest;
    }

    /** By the mean of the gains within {@code reach}: each of them is low enough, so is their mean, and it is smooth. */
    private static void multiply(float[] samples, float[] gain, int reach) {
        double sum = 0;
        int from = 0;
        int to = 0;
        for (int i = 0; i < samples.length; i++) {
            for (; to < Math.min(samples.length, i + reach + 1); to++) {
                sum += gain[to];
            }
            for (; from < i - reach; from++) {
                sum -= gain[from];
            }
            samples[i] *= (float) (sum / (to - from));
        }
    }
}
