package groundbass.sound.drum;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.groove.Piece;
import groundbass.groove.Stroke;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** rule: kit-figures, unless another is named. */
class DrumKitTest {
    private static final DrumKit KIT = new DrumKit(SampleRate.CD);
    private static final int FIFTY_MS = 2_205;

    @ParameterizedTest
    @CsvSource({
        "HAT, 0.035, 0.08",
        "PEDAL, 0.035, 0.08",
        "OPEN, 0.32, 0.9",
        "CRASH, 0.75, 1.05",
        "HIGHTOM, 0.3, 0.75",
        "MIDTOM, 0.3, 0.75",
        "LOWTOM, 0.3, 0.75"
    })
    void aStrokeLastsAsLongAsARecordedOne(Piece piece, double least, double most) {
        assertThat(Measure.lasting(KIT.sample(piece, Stroke.NORMAL))).isBetween(least, most);
    }

    @ParameterizedTest
    @EnumSource(
            value = Piece.class,
            names = {"HAT", "PEDAL", "OPEN", "RIDE", "CRASH"})
    void platesHissAndDoNotRing(Piece piece) {
        assertThat(Measure.flatness(KIT.sample(piece, Stroke.NORMAL), 0, FIFTY_MS))
                .isGreaterThan(0.25);
    }

    @ParameterizedTest
    @CsvSource({"SNARE, 250, 700", "CLAP, 1500, 3500", "RIDE, 6000, 11000", "HAT, 7000, 12000"})
    void brightnessIsThatOfARecordedStroke(Piece piece, double least, double most) {
        assertThat(Measure.centroid(KIT.sample(piece, Stroke.NORMAL), 0, FIFTY_MS))
                .isBetween(least, most);
    }

    @ParameterizedTest
    @EnumSource(
            value = Piece.class,
            names = {"KICK", "SNARE", "HAT", "OPEN", "PEDAL", "RIDE", "CRASH", "HIGHTOM", "LOWTOM", "CLAP"})
    void aHardStrokeIsABrightOne(Piece piece) {
        double ghost = Measure.centroid(KIT.sample(piece, Stroke.GHOST), 0, FIFTY_MS);
        double normal = Measure.centroid(KIT.sample(piece, Stroke.NORMAL), 0, FIFTY_MS);
        double accent = Measure.centroid(KIT.sample(piece, Stroke.ACCENT), 0, FIFTY_MS);
        assertThat(normal).isGreaterThan(ghost * 1.01);
        assertThat(accent).isGreaterThan(normal * 1.01);
    }

    @ParameterizedTest
    @EnumSource(Piece.class)
    void noTwoStrokesAreTheSame(Piece piece) {
        float[] one = KIT.sample(piece, Stroke.NORMAL, 0);
        float[] other = KIT.sample(piece, Stroke.NORMAL, 1);
        double product = 0;
        double first = 0;
        double second = 0;
        for (int i = 0; i < one.length; i++) {
            product += one[i] * other[i];
            first += one[i] * one[i];
            second += other[i] * other[i];
        }
        // ours: their difference is more than a twentieth of either
        assertThat(product / Math.sqrt(first * second)).isLessThan(0.998);
    }
}
