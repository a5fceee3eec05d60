package groundbass.writing;

import static groundbass.writing.Rhythms.shapes;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** rule: tuplet-ratio: n in the time of the next lower power of two; two or four in a compound beat's three. */
class TupletSearchTest {
    @ParameterizedTest
    @CsvSource({
        "1/12x3 r1/4 r1/2, 3:2(8 8 8) r4 r2",
        "1/6 1/12 r1/4 r1/2, 3:2(4 8) r4 r2",
        "1/12 1/6 r1/4 r1/2, 3:2(8 4) r4 r2",
        "1/12 r1/12 1/12 r1/4 r1/2, 3:2(8 r8 8) r4 r2",
        "1/6x3 r1/2, 3:2(4 4 4) r2",
        "1/3x3, 3:2(2 2 2)",
        "1/24x6 r1/4 r1/2, 6:4(16 16 16 16 16 16) r4 r2",
        "1/20x5 r1/4 r1/2, 5:4(16 16 16 16 16) r4 r2",
        "1/28x7 r1/4 r1/2, 7:4(16 16 16 16 16 16 16) r4 r2",
        "1/8 1/24x3 r1/4 r1/2, 8 3:2(16 16 16) r4 r2",
        "1/12x3 1/12x3 r1/2, 3:2(8 8 8) 3:2(8 8 8) r2",
        "1/10x5 r1/2, 5:4(8 8 8 8 8) r2",
    })
    void sharesAreDrawnInTheTimeOfTheNextLowerPowerOfTwo(String rhythm, String expected) {
        assertThat(shapes(Meter.COMMON, rhythm)).isEqualTo(expected);
    }

    @Test
    void aNoteHeldIntoATripletIsTiedAtTheBeat() {
        assertThat(shapes(Meter.COMMON, "1/3 1/12 1/12 r1/2")).isEqualTo("4~3:2(8 8 8) r2");
        assertThat(shapes(Meter.COMMON, "1/12 1/12 1/6 1/12 1/12 r1/2")).isEqualTo("3:2(8 8 8)~3:2(8 8 8) r2");
    }

    @ParameterizedTest
    @CsvSource({
        "3/16 3/16 3/8, 2:3(8 8) 4.",
        "3/32x4 3/8, 4:3(8 8 8 8) 4.",
        "3/64x8 3/8, 8:6(16 16 16 16 16 16 16 16) 4.",
        "3/16 1/16 1/8 3/8, 8. 16 8 4.",
        "3/40x5 3/8, 5:3(8 8 8 8 8) 4.",
    })
    void aCompoundBeatIsSharedByTwoFourOrEight(String rhythm, String expected) {
        assertThat(shapes(Meter.of(6, 8), rhythm)).isEqualTo(expected);
    }

    @Test
    void soIsAGroupOfThreeCounts() {
        assertThat(shapes(Meter.of(7, 8), "1/4 1/4 3/16 3/16")).isEqualTo("4 4 2:3(8 8)");
    }

    /** Eight in a sixteenth are 128ths, which we have no shape for: eight 64ths in the time of four say the same. */
    @Test
    void timesBelowTheShortestShapeBecomeTupletsOfIt() {
        assertThat(shapes(Meter.COMMON, "1/128x8 r3/16 r1/4 r1/2")).isEqualTo("8:4(64 64 64 64 64 64 64 64) r8. r4 r2");
    }

    /** Any fraction is written, with lengths that add up, however unusual. */
    @ParameterizedTest
    @CsvSource({"1/7", "1/11", "2/9", "1/1000", "13/37", "991/997", "1/5"})
    void unusualFractionsAreWrittenAndAddUp(String length) {
        var voice = Rhythms.voice(Meter.COMMON, length);
        assertThat(Fraction.sum(voice.elements().stream().map(Element::length).toList()))
                .isEqualTo(Fraction.ONE);
    }
}
