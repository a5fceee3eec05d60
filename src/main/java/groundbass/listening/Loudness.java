package groundbass.listening;

import groundbass.signal.Sound;

/**
 * How loud a recording is (ITU-R BS.1770-4).
 *
 * @param integrated the gated loudness of the whole in LUFS; negative infinity for silence
 * @param truePeak the highest point between samples too, in dB of full scale; negative infinity for silence
 */
public record Loudness(double integrated, double truePeak) {
    /** Reads a sound to its end. */
    public static Loudness of(Sound sound) {
        return LoudnessMeter.of(sound).reading();
    }

    public boolean isSilent() {
        return Double.isInfinite(integrated);
    }
}
