package groundbass.sound.drum;

import groundbass.groove.Piece;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Noise;
import groundbass.sound.unit.Unit;
import java.util.List;

/**
 * What each piece is made of: skins, wires, plates and the stick. All frequencies and times were set by what such pieces
 * measure like (rule: kit-figures), but for the partials of a skin.
 */
final class DrumSounds {
    /** The second and third partial of an ideal circular membrane (any acoustics textbook). */
    private static final double SECOND_MODE = 1.594;

    private static final double THIRD_MODE = 2.136;

    /** Seeds of one take lie so far from those of the next. */
    private static final int NEXT_TAKE = 1_000;

    /** Decibels an octave by which a plate is brighter for each tenth by which a stroke is harder (by trial, no source). */
    private static final double HARDER = 1.5;

    private final SampleRate rate;
    private final int take;
    private final double bright;
    private final Noise hand;

    /** @param bright how open the noise is, 1 for a normal stroke */
    DrumSounds(SampleRate rate, int take, double bright) {
        this.rate = rate;
        this.take = take;
        this.bright = bright;
        this.hand = new Noise(NEXT_TAKE * take + 5);
    }

    List<Unit> parts(Piece piece) {
        return switch (piece) {
            case KICK -> kick();
            case SNARE -> snare();
            case RIM -> List.of(skin(1_750, 1_620, 0.02, 0.09, 0.6), skin(480, 430, 0.02, 0.12, 0.4), stick(0.4));
            case CLAP -> clap();
            case HAT -> hat(0.3, 1);
            case OPEN -> hat(2.4, 0.8);
            case PEDAL ->
                List.of(wash(9, 3_000, 19_000, 2, 0.34, 0.006, 0.5), plates(24, 2_500, 12_000, 2, 0.25, 0, 0.1));
            case RIDE -> ride();
            case BELL ->
                List.of(
                        plates(14, 760, 6_000, -1.5, 2.6, 0, 0.7),
                        wash(22, 1_500, 18_000, 0, 2, 0.01, 0.25),
                        stick(0.8));
            case CRASH ->
                List.of(
                        wash(11, 500, 19_000, 2.5, 5.5, 0.01, 0.85),
                        plates(60, 380, 5_000, -1, 4.5, 0.03, 0.14),
                        plates(61, 3_000, 16_000, 0, 4, 0.01, 0.13),
                        stick(0.5));
            case HIGHTOM -> tom(185, 1.5);
            case MIDTOM -> tom(135, 1.7);
            case LOWTOM -> tom(92, 1.9);
            case SHAKER ->
                List.of(wash(12, 4_500, 16_000, 1, 0.15, 0.03, 0.5), hiss(16, 6_000, 13_000, 0.05, 0.08, 0.5));
            case TAMBOURINE ->
                List.of(plates(70, 4_200, 14_000, 0, 0.45, 0, 0.35), wash(13, 5_000, 15_500, 1, 0.5, 0.003, 0.5));
            case COWBELL ->
                List.of(
                        skin(563, 563, 0.1, 0.3, 0.5),
                        skin(846, 846, 0.1, 0.22, 0.45),
                        plates(8, 1_700, 6_500, -3, 0.2, 0, 0.3 * bright),
                        stick(0.3 * bright));
        };
    }

    /** No foot drives the beater twice alike: how far the skin is stretched, and for how long, differs. */
    private List<Unit> kick() {
        return List.of(
                skin(49 + 101 * bright * varied(0.08), 49, 0.1 * varied(0.08), 0.55, 1),
                skin(240, 96, 0.05 * varied(0.1), 0.16, 0.3),
                hiss(1, 1_200, 5_000 * bright, 0, 0.02, 0.8 * bright * bright),
                hiss(17, 200, 1_200, 0, 0.04, 0.4));
    }

    private List<Unit> snare() {
        return List.of(
                skin(225, 188, 0.04, 0.4, 0.7),
                skin(225 * SECOND_MODE, 188 * SECOND_MODE, 0.04, 0.26, 0.4),
                skin(225 * THIRD_MODE, 188 * THIRD_MODE, 0.04, 0.16, 0.15),
                hiss(2, 1_200, 6_000 * bright, 0.002, 0.34, 0.58 * bright),
                hiss(18, 400, 3_000 * bright, 0, 0.2, 0.58),
                hiss(19, 3_500, 10_000 * bright, 0.006, 0.4, 0.15 * bright));
    }

    /** Several hands that do not quite meet, and the room. */
    private List<Unit> clap() {
        return List.of(
                hiss(4, 900, 2_200 * bright, 0.001, 0.02, 0.8),
                hiss(5, 900, 2_200 * bright, 0.011, 0.03, 0.8),
                hiss(6, 950, 2_400 * bright, 0.022, 0.035, 0.9),
                hiss(20, 900, 2_000 * bright, 0.03, 0.3, 0.7));
    }

    private List<Unit> hat(double t60, double level) {
        return List.of(
                wash(7, 5_000, 20_000, 3.5, t60, 0.002, level * 1.9),
                plates(40, 4_500, 17_000, 2.5, t60 * 0.8, 0, level * 0.29),
                plates(12, 900, 3_200, 0, t60 * 0.5, 0, level * 0.04),
                hiss(21, 4_000, 12_000, 0, 0.015, 0.2 * bright));
    }

    /** The stick, the note that it draws from the bow, and what swells beneath. */
    private List<Unit> ride() {
        return List.of(
                hiss(10, 6_000, 16_000, 0, 0.06, 0.8 * bright * bright),
                plates(7, 2_700, 6_200, 0, 1.1, 0, 0.045),
                plates(24, 420, 2_600, -1, 2.6, 0.03, 0.015),
                plates(50, 3_000, 17_000, 2, 2, 0.004, 0.07),
                wash(23, 3_500, 20_000, 3, 2.2, 0.004, 0.4));
    }

    /** A skin that is struck hard is tighter for a moment. */
    private List<Unit> tom(double hertz, double t60) {
        double sharp = 1 + 0.3 * bright * bright;
        return List.of(
                skin(hertz * sharp, hertz, 0.16, t60, 0.8),
                skin(hertz * sharp * SECOND_MODE, hertz * SECOND_MODE, 0.16, t60 * 0.45, 0.25),
                skin(hertz * sharp * THIRD_MODE, hertz * THIRD_MODE, 0.16, t60 * 0.3, 0.1),
                hiss(14, 500, 4_500 * bright, 0, 0.04, 0.7 * bright));
    }

    private Unit stick(double level) {
        return hiss(15, 2_500, 9_000 * bright, 0, 0.012, level * bright);
    }

    /** No two strokes meet a skin at the same place. */
    private Unit skin(double from, double to, double fall, double t60, double level) {
        double tight = varied(0.012);
        return new Membrane(rate, from * tight, to * tight, fall, t60 * varied(0.1), level * varied(0.15));
    }

    private Unit hiss(int seed, double low, double high, double rise, double t60, double level) {
        return new Hiss(rate, seed + NEXT_TAKE * take, low, high, rise, t60, level * varied(0.12));
    }

    private Unit plates(int partials, double low, double high, double tilt, double t60, double bloom, double level) {
        return new Cymbal(rate, 77 * partials + NEXT_TAKE * take, partials, low, high, tilt, t60, bloom, level);
    }

    private Unit wash(int seed, double low, double high, double tilt, double t60, double bloom, double level) {
        double harder = HARDER * 10 * (bright - 1);
        double higher = bright * bright; // and so narrower, which is made up for
        return new Wash(rate, seed + NEXT_TAKE * take, low * higher, high, tilt + harder, t60, bloom, level * higher);
    }

    private double varied(double most) {
        return 1 + most * hand.next();
    }
}
