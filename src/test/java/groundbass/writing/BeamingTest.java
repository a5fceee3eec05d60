package groundbass.writing;

import static groundbass.writing.Rhythms.groups;
import static groundbass.writing.Rhythms.parts;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Meter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** rule: beam-examples; groups and beams worked out by hand. */
class BeamingTest {
    private static final Meter FOUR = Meter.COMMON;

    @ParameterizedTest
    @CsvSource({
        "4, 4, 1/16x16, 0+4 4+4 8+4 12+4",
        "4, 4, 1/8x8, 0+4 4+4",
        "4, 4, 1/8 1/16 1/16 1/8 1/16 1/16 r1/2, 0+3 3+3",
        "4, 4, 1/4 1/8 1/8 1/4 1/8 1/8, 1+2 4+2",
        "4, 4, 1/8 1/4 1/8 1/2, ''",
        "6, 8, 1/8x6, 0+3 3+3",
        "6, 8, 1/16x12, 0+6 6+6",
        "3, 4, 1/8x6, 0+6",
        "12, 8, 1/8x12, 0+3 3+3 6+3 9+3",
    })
    void beamsJoinAsTheExamplesSay(int counts, int unit, String rhythm, String expected) {
        assertThat(groups(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "1/8 1/16 1/16 r1/4 r1/2, b cb ee",
        "1/16 1/8 1/16 r1/4 r1/2, b> c e<",
        "3/16 1/16 r1/4 r1/2, b e<",
        "1/16 3/16 r1/4 r1/2, b> e",
        "1/16x4 r1/4 r1/2, bb cc cc ee",
    })
    void partsAreThoseOfTheExamples(String rhythm, String expected) {
        assertThat(parts(FOUR, rhythm)).isEqualTo(expected);
    }

    /** rule: beam-simple-metre. */
    @ParameterizedTest
    @CsvSource({
        "4, 4, 1/8 1/8 1/8 1/16 1/16 1/8x4, 0+2 2+3 5+4",
        "2, 4, 1/8x4, 0+4",
        "2, 4, 1/8 1/8 1/8 1/16 1/16, 0+2 2+3",
        "3, 4, 1/8 1/8 1/4 1/8 1/8, 0+2 3+2",
        "3, 4, 1/8x4 1/4, 0+2 2+2",
    })
    void eighthsJoinOverMoreThanABeatOnlyAmongEighths(int counts, int unit, String rhythm, String expected) {
        assertThat(groups(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: beam-grouped-metre, beam-cut-time. */
    @Test
    void groupedMetresBeamByGroupsAndCutTimeByHalves() {
        assertThat(groups(Meter.of(7, 8), "1/8x7")).isEqualTo("0+2 2+2 4+3");
        assertThat(groups(new Meter(8, List.of(3, 2, 2)), "1/8x7")).isEqualTo("0+3 3+2 5+2");
        assertThat(groups(Meter.of(5, 8), "1/8x5")).isEqualTo("0+3 3+2");
        assertThat(groups(Meter.of(2, 2), "1/8x8")).isEqualTo("0+4 4+4");
    }

    /** rule: beam-grouped-metre: where the count is a quarter, only eighths join over it. */
    @ParameterizedTest
    @CsvSource({
        "1/8x10, 0+6 6+4",
        "1/8 1/8 1/16x4 1/4 1/8x4, 0+2 2+4 7+4",
        "1/4 3/16 1/16 r1/8 1/8 1/2, 1+2",
        "1/8 1/8 r1/8 1/8 1/4 1/2, 0+2",
    })
    void groupsOfQuartersJoinEighthsAlone(String rhythm, String expected) {
        assertThat(groups(new Meter(4, List.of(3, 2)), rhythm)).isEqualTo(expected);
    }

    /** rule: beam-secondary-break. */
    @Test
    void amongThirtySecondsOnlyTheFirstBeamCrossesAnEighth() {
        assertThat(parts(FOUR, "1/32x8 r1/4 r1/2")).isEqualTo("bbb ccc ccc cee cbb ccc ccc eee");
    }

    /** rule: beam-hooks: in dotted-8th, 16th, 8th the 16th belongs to what came before. */
    @Test
    void aPartialBeamInTheMiddlePointsToItsPair() {
        assertThat(parts(Meter.of(6, 8), "3/16 1/16 1/8 r3/8")).isEqualTo("b c< e");
    }

    /** rule: beam-over-rests. */
    @ParameterizedTest
    @CsvSource({
        "1/16 r1/16 1/16 1/16 r1/4 r1/2, 0+4",
        "r1/16 1/16 1/16 r1/16 r1/4 r1/2, 1+2",
        "1/8 r1/8 1/8 1/8 r1/2, 2+2",
        "1/8 1/8 r1/8 1/8 r1/2, 0+2",
    })
    void aBeamCoversARestOnlyBetweenNotesOfOneBeat(String rhythm, String expected) {
        assertThat(groups(FOUR, rhythm)).isEqualTo(expected);
    }

    /** rule: beam-tuplet-break. */
    @Test
    void atATupletsEndOnlyTheFirstBeamGoesOnAndOnlyInsideABeat() {
        assertThat(groups(FOUR, "1/12x3 1/12x3 1/8x4")).isEqualTo("0+3 3+3 6+4");
        assertThat(groups(FOUR, "1/8 1/24x3 r1/4 r1/2")).isEqualTo("0+4");
        assertThat(parts(FOUR, "1/8 1/24x3 r1/4 r1/2")).isEqualTo("b cb cc ee");
        assertThat(parts(FOUR, "1/16 1/16 1/24x3 r1/4 r1/2")).isEqualTo("bb ce cb cc ee");
    }
}
