package groundbass.sound;

import groundbass.groove.Piece;
import groundbass.groove.Stroke;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The sound of each piece, synthesized once for each kind of stroke. All frequencies and times were set by what such
 * pieces measure like and by ear (common practice, no source). Thread-safe; nobody changes a sample.
 */
final class DrumKit {
    /** The one kit of all that is rendered: its samples are made once. */
    static final DrumKit CD = new DrumKit(SampleRate.CD);

    private static final double SPARE_SECONDS = 0.05;
    private static final double RUMBLE_HERTZ = 25;

    private final SampleRate rate;
    private final Map<Piece, Map<Stroke, float[]>> samples = new EnumMap<>(Piece.class);

    DrumKit(SampleRate rate) {
        this.rate = rate;
    }

    synchronized float[] sample(Piece piece, Stroke stroke) {
        return samples.computeIfAbsent(piece, each -> new EnumMap<>(Stroke.class))
                .computeIfAbsent(stroke, each -> make(piece, each));
    }

    private float[] make(Piece piece, Stroke stroke) {
        double force = stroke.velocity() / (double) Stroke.NORMAL.velocity();
        var out = new float[(int) rate.at(seconds(piece) + SPARE_SECONDS)];
        parts(piece, 0.6 + 0.4 * force).forEach(part -> part.render(out, 0, out.length));
        withoutRumble(out);
        fadeOut(out);
        float gain = (float) (force * force * level(piece));
        for (int i = 0; i < out.length; i++) {
            out[i] *= gain;
        }
        return out;
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
            case HAT, PEDAL, RIM, SHAKER, CLAP -> 0.2;
            case KICK, SNARE, HIGHTOM, MIDTOM, LOWTOM, TAMBOURINE, COWBELL -> 0.45;
            case OPEN -> 0.7;
            case RIDE, BELL -> 1.3;
            case CRASH -> 1.8;
        };
    }

    /** Against one another, so that a kit played evenly is balanced. */
    private static double level(Piece piece) {
        return switch (piece) {
            case KICK, SNARE -> 0.42;
            case RIM, COWBELL -> 0.3;
            case CLAP -> 0.8;
            case HAT, PEDAL, TAMBOURINE -> 0.85;
            case SHAKER -> 1.1;
            case OPEN -> 0.5;
            case RIDE -> 0.6;
            case BELL, CRASH -> 0.4;
            case HIGHTOM, MIDTOM, LOWTOM -> 0.42;
        };
    }

    /** @param bright how open the noise is, 1 for a normal stroke */
    private List<Unit> parts(Piece piece, double bright) {
        return switch (piece) {
            case KICK -> List.of(skin(150, 47, 0.12, 0.4, 1), hiss(1, 300, 2_500 * bright, 0, 0.02, 0.5));
            case SNARE ->
                List.of(
                        skin(260, 185, 0.05, 0.16, 0.4),
                        skin(410, 330, 0.05, 0.1, 0.15),
                        hiss(2, 1_100, 8_500 * bright, 0, 0.24, 1.4));
            case RIM -> List.of(skin(1_750, 1_600, 0.02, 0.05, 0.7), hiss(3, 900, 6_000 * bright, 0, 0.03, 0.6));
            case CLAP ->
                List.of(
                        hiss(4, 700, 3_500, 0.002, 0.03, 0.8),
                        hiss(5, 700, 3_500, 0.014, 0.05, 0.8),
                        hiss(6, 700, 3_500, 0.026, 0.16, 1.2));
            case HAT -> List.of(metal(520, 6_500 * bright, 0.07, 1.2), hiss(7, 6_000, 14_000, 0, 0.06, 0.8));
            case OPEN -> List.of(metal(520, 6_000 * bright, 0.55, 1.2), hiss(8, 6_000, 14_000, 0, 0.5, 0.7));
            case PEDAL -> List.of(metal(520, 5_000, 0.05, 0.8), hiss(9, 3_500, 9_000, 0.002, 0.04, 0.6));
            case RIDE -> List.of(metal(670, 6_500, 1.1, 0.5), hiss(10, 6_500, 14_000, 0, 0.8, 0.5), stick());
            case BELL -> List.of(metal(830, 2_500, 1.0, 0.7), skin(1_120, 1_120, 0.1, 0.9, 0.15), stick());
            case CRASH -> List.of(metal(440, 3_000, 1.6, 0.7), hiss(11, 2_500, 13_000, 0.001, 1.5, 0.7));
            case HIGHTOM -> tom(190);
            case MIDTOM -> tom(140);
            case LOWTOM -> tom(98);
            case SHAKER -> List.of(hiss(12, 4_500, 11_000, 0.025, 0.12, 0.9));
            case TAMBOURINE -> List.of(metal(1_450, 7_000, 0.25, 0.9), hiss(13, 6_500, 14_000, 0.003, 0.15, 0.6));
            case COWBELL -> List.of(metal(587, 400, 0.22, 0.7));
        };
    }

    private List<Unit> tom(double hertz) {
        return List.of(skin(hertz * 1.5, hertz, 0.12, 0.4, 0.9), hiss(14, 400, 4_000, 0, 0.03, 0.3));
    }

    private Unit stick() {
        return hiss(15, 2_500, 9_000, 0, 0.015, 0.5);
    }

    private Unit skin(double from, double to, double fall, double t60, double level) {
        return new Membrane(rate, from, to, fall, t60, level);
    }

    private Unit hiss(int seed, double low, double high, double rise, double t60, double level) {
        return new Hiss(rate, seed, low, high, rise, t60, level);
    }

    private Unit metal(double base, double low, double t60, double level) {
        return new Metal(rate, base, low, t60, level);
    }
}
