package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Noise;
import groundbass.sound.unit.OnePole;
import java.util.SplittableRandom;

/** The rustle of skin, nail and winding: how far it shakes the string, sample by sample. */
final class ExcitationNoise {
    /** Keeps the shaking about the string's rest; below some 140 Hz nothing is left of it. */
    private static final double LEAK = 0.98;

    private static final double SETTLING_SECONDS = 0.003;

    /** Delays by which a blow is drawn out, each to twice as long (by trial, no source). */
    private static final double[] DRAWN_OUT = {0.0003, 0.0008, 0.0017, 0.0033};

    private static final double AGAIN = 0.55;
    private static final double DRAWN_OUT_SECONDS = 0.4;

    private ExcitationNoise() {}

    static double[] of(SampleRate rate, Excitation excitation, double bright, double level, int seed) {
        if (excitation.noise() == 0) {
            return new double[0];
        }
        var noise = new Noise(seed);
        var first = new OnePole(rate, bright);
        var second = new OnePole(rate, bright);
        double fade = rate.decay(excitation.noiseSeconds());
        double gain = excitation.noise() * level;
        var grain = new double[grainLength(rate, excitation)];
        double[] knock = knock(rate, excitation.knock() * level, grainLength(rate, excitation), seed);
        double shaken = 0;
        for (int i = 0; i < grain.length; i++) {
            shaken = LEAK * shaken + second.low(first.low(knock[i] + gain * noise.next()));
            grain[i] = shaken;
            gain *= fade;
        }
        return grain;
    }

    private static int grainLength(SampleRate rate, Excitation excitation) {
        return (int) rate.at(excitation.noiseSeconds() + SETTLING_SECONDS);
    }

    /**
     * One blow that the flesh of a hand draws out: all-passes of Schroeder in a row, each with a delay of its own, so that
     * it is as full at one frequency as at another, and has no pitch, however short it is.
     */
    private static double[] knock(SampleRate rate, double amount, int count, int seed) {
        var blow = new double[count];
        if (amount == 0) {
            return blow;
        }
        var random = new SplittableRandom(seed);
        blow[0] = amount;
        for (double seconds : DRAWN_OUT) {
            int delay = (int) rate.at(seconds * (1 + random.nextDouble()));
            var before = blow.clone();
            for (int i = 0; i < count; i++) {
                double late = i < delay ? 0 : before[i - delay] + AGAIN * blow[i - delay];
                blow[i] = late - AGAIN * before[i];
            }
        }
        double fade = rate.decay(DRAWN_OUT_SECONDS);
        double left = 1;
        for (int i = 0; i < count; i++) {
            blow[i] *= left;
            left *= fade;
        }
        return blow;
    }
}
