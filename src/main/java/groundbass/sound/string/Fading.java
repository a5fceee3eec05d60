package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.Arrays;

/** A string under a hand: open it sounds as it likes, touched it fades. */
final class Fading implements Unit {
    private static final float INAUDIBLE = 1e-5f;

    private final SampleRate rate;
    private final TwoPlanes string;
    private float[] buffer = {};
    private float gain;
    private float factor = 1;
    private int opening;
    private float rise;
    private float level = 1;
    private float levelStep;

    /** Samples until the level is reached. */
    private int settling;

    Fading(SampleRate rate, TwoPlanes string) {
        this.rate = rate;
        this.string = string;
    }

    TwoPlanes string() {
        return string;
    }

    /** Lets it sound from now on; not all at once, or a blow beside the pickup would begin with a step. */
    void open(double seconds) {
        gain = 1;
        opening = (int) rate.at(seconds);
        rise = opening == 0 ? 0 : 1f / opening;
        factor = 1;
        level = 1;
        settling = 0;
    }

    /**
     * Leads what is heard to so much of what an open string gives, little by little over so many samples, as a finger takes
     * it that comes down. Fingers that follow one another do not take more and more of it.
     */
    void soften(double share, int samples) {
        float now = level - settling * levelStep;
        level = (float) share;
        levelStep = (level - now) / samples;
        settling = samples;
    }

    boolean isOpen() {
        return gain == 1 && factor == 1;
    }

    /** @param seconds to -60 dB */
    void fade(double seconds) {
        factor = Math.min(factor, (float) rate.decay(seconds));
    }

    @Override
    public void render(float[] out, int from, int count) {
        if (gain == 0 || string.isSilent()) {
            settling = Math.max(0, settling - count);
            return;
        }
        if (buffer.length < count) {
            buffer = new float[count];
        }
        Arrays.fill(buffer, 0, count, 0);
        string.render(buffer, 0, count);
        if (factor == 1 && settling == 0 && opening == 0) {
            for (int i = 0; i < count; i++) {
                out[from + i] += buffer[i] * gain * level;
            }
            return;
        }
        for (int i = 0; i < count; i++) {
            gain = gain < INAUDIBLE ? 0 : gain * factor;
            out[from + i] +=
                    buffer[i] * gain * (level - settling * levelStep) * (opening > 0 ? 1 - opening-- * rise : 1);
            settling = Math.max(0, settling - 1);
        }
    }
}
