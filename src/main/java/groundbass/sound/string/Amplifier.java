package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.OnePole;
import groundbass.sound.unit.Unit;
import java.util.Arrays;

/**
 * What the strings pass on their way out: hard strokes are pressed together as an amplifier does, {@code x / sqrt(1 +
 * (x / k)^2)}, and what does not swing is taken away. Soft strokes go through unchanged.
 */
public final class Amplifier implements Unit {
    /** Where pressing sets in; a finger's stroke peaks at 1 (by ear, no source). */
    private static final float KNEE = 3;

    /** Below the lowest string. */
    private static final double LOWEST_HERTZ = 10;

    private static final int BLOCK = 512;

    private final Unit strings;
    private final OnePole still;
    private final float[] buffer = new float[BLOCK];

    public Amplifier(SampleRate rate, Unit strings) {
        this.strings = strings;
        this.still = new OnePole(rate, LOWEST_HERTZ);
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int done = 0; done < count; done += BLOCK) {
            renderBlock(out, from + done, Math.min(BLOCK, count - done));
        }
    }

    private void renderBlock(float[] out, int from, int count) {
        Arrays.fill(buffer, 0);
        strings.render(buffer, 0, count);
        for (int i = 0; i < count; i++) {
            float x = buffer[i] * (1 / KNEE);
            buffer[i] /= (float) Math.sqrt(1 + x * x);
        }
        for (int i = 0; i < count; i++) {
            out[from + i] += (float) still.high(buffer[i]);
        }
    }
}
