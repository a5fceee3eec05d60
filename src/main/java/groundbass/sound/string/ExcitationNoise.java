package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Noise;
import groundbass.sound.unit.OnePole;

/** The rustle of skin, nail and winding: how far it shakes the string, sample by sample. */
final class ExcitationNoise {
    /** Keeps the shaking about the string's rest; below some 140 Hz nothing is left of it. */
    private static final double LEAK = 0.98;

    private static final double SETTLING_SECONDS = 0.003;

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
        var grain = new double[(int) rate.at(excitation.noiseSeconds() + SETTLING_SECONDS)];
        double shaken = 0;
        for (int i = 0; i < grain.length; i++) {
            shaken = LEAK * shaken + second.low(first.low(gain * noise.next()));
            grain[i] = shaken;
            gain *= fade;
        }
        return grain;
    }
}
