package groundbass.listening;

import groundbass.signal.Sound;

/**
 * How loud a recording is (ITU-R BS.1770-4).
 *
 * @param integrated the gated loudness of the whole in LUFS; negative infinity for silence
 * @param truePeak the highest point between samples too, in dB of full scale; negative infinity for silence
 */
public record Loudness(double integrated, double truePeak) {
    private static final int BLOCK = 4_096;

    /** Reads a sound to its end. */
    public static Loudness of(Sound sound) {
        var meter = new LoudnessMeter(sound.rate().hertz(), sound.channels());
        var block = new float[sound.channels()][BLOCK];
        for (int count = sound.read(block); count > 0; count = sound.read(block)) {
            meter.add(block, count);
        }
        return meter.reading();
    }

    /** The factor that brings it to {@code target} LUFS, or as near as keeps its peak at {@code ceiling}. */
    public double gainTo(double target, double ceiling) {
        boolean silent = Double.isInfinite(integrated) || Double.isInfinite(truePeak);
        return silent ? 1 : StrictMath.pow(10, Math.min(target - integrated, ceiling - truePeak) / 20);
    }
}
