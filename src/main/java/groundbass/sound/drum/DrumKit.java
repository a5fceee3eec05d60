package groundbass.sound.drum;

import groundbass.groove.Piece;
import groundbass.groove.Stroke;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.OnePole;
import java.util.HashMap;
import java.util.Map;

/**
 * The sound of each piece, synthesized once for each kind of stroke. All frequencies and times were set by what such
 * pieces measure like and by ear (common practice, no source). Thread-safe; nobody changes a sample.
 */
public final class DrumKit {
    /** The one kit of all that is rendered: its samples are made once. */
    static final DrumKit CD = new DrumKit(SampleRate.CD);

    private static final double SPARE_SECONDS = 0.05;
    private static final double ACCENT_POWER = 4.2;
    private static final double RUMBLE_HERTZ = 25;

    /** How often a piece is sampled for each stroke: no two strokes of a drummer are alike. */
    static final int TAKES = 3;

    /** How much louder and softer takes are. */
    private static final float[] SHADES = {1, 0.95f, 1.03f};

    private final SampleRate rate;
    private final Map<Sampled, float[]> samples = new HashMap<>();

    private record Sampled(Piece piece, Stroke stroke, int take) {}

    public DrumKit(SampleRate rate) {
        this.rate = rate;
    }

    public float[] sample(Piece piece, Stroke stroke) {
        return sample(piece, stroke, 0);
    }

    /** @param count which stroke this is; takes follow one another */
    synchronized float[] sample(Piece piece, Stroke stroke, int count) {
        return samples.computeIfAbsent(new Sampled(piece, stroke, count % TAKES), this::make);
    }

    private float[] make(Sampled sampled) {
        var piece = sampled.piece();
        double force = sampled.stroke().velocity() / (double) Stroke.NORMAL.velocity();
        var out = new float[(int) rate.at(seconds(piece) + SPARE_SECONDS)];
        var strike = new DrumSounds(rate, sampled.take(), 0.6 + 0.4 * force);
        strike.parts(piece).forEach(part -> part.render(out, 0, out.length));
        withoutRumble(out);
        fadeOut(out);
        float gain = (float) (loudness(force) * level(piece)) * SHADES[sampled.take()];
        for (int i = 0; i < out.length; i++) {
            out[i] *= gain;
        }
        return out;
    }

    /** An accent stands 10.5 dB over a normal stroke, so that 4 are left behind everything that holds a mix together (rule: accent-at-the-output). */
    private static double loudness(double force) {
        return StrictMath.pow(force, force > 1 ? ACCENT_POWER : 2);
    }

    /** Below what a speaker plays, and with it what does not sum to nothing. */
    private void withoutRumble(float[] out) {
        var low = new OnePole(rate, RUMBLE_HERTZ);
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) low.high(out[i]);
        }
    }

    private void fadeOut(float[] out) {
        int length = (int) rate.at(SPARE_SECONDS);
        for (int i = 0; i < length; i++) {
            out[out.length - 1 - i] *= (float) i / length;
        }
    }

    private static double seconds(Piece piece) {
        return switch (piece) {
            case SHAKER -> 0.2;
            case RIM -> 0.3;
            case CLAP, HAT, PEDAL -> 0.35;
            case KICK, SNARE, TAMBOURINE, COWBELL -> 0.5;
            case HIGHTOM, MIDTOM, LOWTOM -> 1.4;
            case OPEN -> 1.6;
            case RIDE, BELL -> 2.2;
            case CRASH -> 3.4;
        };
    }

    /** Against one another, so that a kit played evenly is balanced. */
    private static double level(Piece piece) {
        return switch (piece) {
            case KICK -> 0.39;
            case HIGHTOM, MIDTOM, LOWTOM -> 0.25;
            case SNARE -> 0.49;
            case RIM -> 0.54;
            case CLAP -> 4.2;
            case HAT -> 0.5;
            case PEDAL -> 0.75;
            case OPEN -> 0.4;
            case RIDE -> 0.95;
            case BELL -> 0.24;
            case CRASH -> 0.6;
            case SHAKER -> 1.9;
            case TAMBOURINE -> 0.45;
            case COWBELL -> 0.26;
        };
    }
}
