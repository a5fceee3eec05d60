package groundbass.sound.drum;

import groundbass.groove.Piece;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.List;

/**
 * What each piece is made of: skins, wires, plates and the stick. All frequencies and times were set by what such pieces
 * measure like and by what their spectrograms show (common practice, no source), but for the partials of a skin.
 */
final class DrumSounds {
    /** The second and third partial of an ideal circular membrane (any acoustics textbook). */
    private static final double SECOND_MODE = 1.594;

    private static final double THIRD_MODE = 2.136;

    /** Seeds of one take lie so far from those of the next. */
    private static final int NEXT_TAKE = 1_000;

    private final SampleRate rate;
    private final int take;
    private final double bright;

    /** @param bright how open the noise is, 1 for a normal stroke */
    DrumSounds(SampleRate rate, int take, double bright) {
        this.rate = rate;
        this.take = take;
        this.bright = bright;
    }

    List<Unit> parts(Piece piece) {
        return switch (piece) {
            case KICK -> kick();
            case SNARE -> snare();
            case RIM -> List.of(skin(1_750, 1_620, 0.02, 0.09, 0.6), skin(480, 430, 0.02, 0.12, 0.4), stick(0.4));
            case CLAP -> clap();
            case HAT -> hat(0.26, 1);
            case OPEN -> hat(1.1, 0.8);
            case PEDAL -> List.of(plates(40, 2_500, 11_000, 0, 0.22, 0, 0.5), hiss(9, 3_000, 9_000, 0.003, 0.14, 0.4));
            case RIDE ->
                List.of(
                        plates(110, 480, 13_000, 1, 3.2, 0.01, 0.45),
                        plates(6, 2_900, 5_200, 0, 1.4, 0, 0.35),
                        hiss(10, 6_500, 14_000, 0, 0.5, 0.2),
                        stick(0.7));
            case BELL ->
                List.of(
                        plates(14, 760, 6_000, -1.5, 2.6, 0, 0.7),
                        plates(60, 500, 12_000, -3, 2.2, 0.02, 0.25),
                        stick(0.5));
            case CRASH -> List.of(plates(180, 420, 14_500, 2, 4, 0.05, 0.7), hiss(11, 3_000, 13_000, 0.004, 1.1, 0.6));
            case HIGHTOM -> tom(185);
            case MIDTOM -> tom(135);
            case LOWTOM -> tom(92);
            case SHAKER -> List.of(hiss(12, 4_500, 11_000, 0.03, 0.13, 0.9), hiss(16, 6_000, 13_000, 0.05, 0.08, 0.5));
            case TAMBOURINE ->
                List.of(plates(70, 4_200, 14_000, 0, 0.45, 0, 0.6), hiss(13, 6_500, 14_000, 0.003, 0.12, 0.5));
            case COWBELL ->
                List.of(
                        skin(563, 563, 0.1, 0.3, 0.5),
                        skin(846, 846, 0.1, 0.22, 0.45),
                        plates(8, 1_700, 6_500, -3, 0.2, 0, 0.3));
        };
    }

    private List<Unit> kick() {
        return List.of(
                skin(150, 49, 0.1, 0.55, 1),
                skin(240, 96, 0.05, 0.16, 0.3),
                hiss(1, 1_200, 5_000 * bright, 0, 0.02, 0.45),
                hiss(17, 200, 1_200, 0, 0.04, 0.4));
    }

    private List<Unit> snare() {
        return List.of(
                skin(225, 188, 0.04, 0.34, 0.6),
                skin(225 * SECOND_MODE, 188 * SECOND_MODE, 0.04, 0.24, 0.35),
                skin(225 * THIRD_MODE, 188 * THIRD_MODE, 0.04, 0.15, 0.15),
                hiss(2, 1_500, 8_500 * bright, 0.002, 0.36, 0.6),
                hiss(18, 500, 4_000 * bright, 0, 0.16, 0.55),
                hiss(19, 4_000, 12_000, 0.006, 0.4, 0.12));
    }

    /** Several hands that do not quite meet, and the room. */
    private List<Unit> clap() {
        return List.of(
                hiss(4, 800, 3_200, 0.001, 0.02, 0.8),
                hiss(5, 800, 3_200, 0.011, 0.03, 0.8),
                hiss(6, 900, 3_500, 0.022, 0.035, 0.9),
                hiss(20, 900, 3_000, 0.03, 0.3, 0.7));
    }

    private List<Unit> hat(double t60, double level) {
        return List.of(
                plates(70, 3_200, 15_500, 1.5, t60, 0, level * 0.75),
                plates(12, 900, 3_200, 0, t60 * 0.5, 0, level * 0.12),
                hiss(7, 5_000, 15_000, 0.001, t60 * 0.8, level * 0.7),
                hiss(21, 3_000, 9_000 * bright, 0, 0.02, 0.25));
    }

    private List<Unit> tom(double hertz) {
        return List.of(
                skin(hertz * 1.4, hertz, 0.12, 0.65, 0.8),
                skin(hertz * 1.4 * SECOND_MODE, hertz * SECOND_MODE, 0.12, 0.3, 0.25),
                skin(hertz * 1.4 * THIRD_MODE, hertz * THIRD_MODE, 0.12, 0.2, 0.1),
                hiss(14, 500, 4_500 * bright, 0, 0.03, 0.5));
    }

    private Unit stick(double level) {
        return hiss(15, 2_500, 9_000 * bright, 0, 0.012, level);
    }

    private Unit skin(double from, double to, double fall, double t60, double level) {
        return new Membrane(rate, from, to, fall, t60, level);
    }

    private Unit hiss(int seed, double low, double high, double rise, double t60, double level) {
        return new Hiss(rate, seed + NEXT_TAKE * take, low, high, rise, t60, level);
    }

    private Unit plates(int partials, double low, double high, double tilt, double t60, double bloom, double level) {
        return new Cymbal(rate, 77 * partials + NEXT_TAKE * take, partials, low, high, tilt, t60, bloom, level);
    }
}
