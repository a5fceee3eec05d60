package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Biquad;
import groundbass.sound.unit.Unit;
import java.util.Arrays;

/**
 * A light amplifier and its loudspeaker: a valve that bends one half of the wave more than the other, so that even harmonics
 * tell low notes where no speaker gives them, and a box that leaves out what lies under it, takes the boom from the low
 * middle, lifts where a stroke speaks and rolls off above (rule: bass-amplifier).
 */
public final class Cabinet implements Unit {
    /** How far it is turned up; a finger's stroke peaks at 1. */
    private static final float DRIVE = 0.4f;

    /** Where the valve rests. */
    private static final float BIAS = 0.18f;

    private static final float AT_REST = bent(BIAS);

    /** What is soft comes out as it went in. */
    private static final float MAKE_UP = (float) (StrictMath.pow(1 + BIAS * BIAS, 1.5) / DRIVE);

    private static final int BLOCK = 256;

    private final Unit strings;
    private final Biquad under;
    private final Biquad boom;
    private final Biquad speech;
    private final Biquad above;
    private final float[] driven = new float[BLOCK];

    public Cabinet(SampleRate rate, Unit strings) {
        this.strings = strings;
        this.under = Biquad.highPass(rate, 36, 0.7);
        this.boom = Biquad.peaking(rate, 420, 0.8, -3);
        this.speech = Biquad.peaking(rate, 1_700, 0.8, 3.5);
        this.above = Biquad.lowPass(rate, 5_500, 0.7);
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int done = 0; done < count; done += BLOCK) {
            renderBlock(out, from + done, Math.min(BLOCK, count - done));
        }
    }

    private void renderBlock(float[] out, int from, int count) {
        Arrays.fill(driven, 0);
        strings.render(driven, 0, count);
        for (int i = 0; i < count; i++) {
            driven[i] = MAKE_UP * (bent(DRIVE * driven[i] + BIAS) - AT_REST);
        }
        under.pass(boom, driven, count);
        speech.pass(above, driven, count);
        for (int i = 0; i < count; i++) {
            out[from + i] += driven[i];
        }
    }

    private static float bent(float x) {
        return x / (float) Math.sqrt(1 + x * x);
    }
}
