package groundbass.writing;

import static groundbass.writing.Rhythms.shapes;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Meter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How notes and rests are cut, worked out by hand. */
class NoteSplittingTest {
    private static final Meter FOUR = Meter.COMMON;

    /** rule: show-middle-of-bar. */
    @ParameterizedTest
    @CsvSource({
        "r3/8 1/4 r3/8, r4 r8 8~8 r8 r4",
        "1/4 1/2 1/4, 4 2 4",
        "1/4 3/4, 4 4~2",
        "3/4 1/4, 2. 4",
        "3/8 3/8 1/4, 4. 8~4 4",
        "1/8 3/4 1/8, 8 4.~4. 8",
        "5/8 3/8, 2~8 4.",
        "7/8 1/8, 2~4. 8",
        "1, 1",
    })
    void theMiddleOfABarShows(String rhythm, String expected) {
        assertThat(shapes(FOUR, rhythm)).isEqualTo(expected);
    }

    /** rule: show-next-beat. */
    @ParameterizedTest
    @CsvSource({
        "1/16 1/4 r3/16 r1/2, 16 8.~16 r8. r2",
        "1/16 1/8 1/16 r1/4 r1/2, 16 8 16 r4 r2",
        "1/8 3/16 r3/16 r1/2, 8 8~16 r8. r2",
        "3/16 5/16 r1/2, 8. 16~4 r2",
    })
    void aNoteOnAnOffSixteenthShowsTheNextBeat(String rhythm, String expected) {
        assertThat(shapes(FOUR, rhythm)).isEqualTo(expected);
    }

    /** rule: fewest-note-shapes: a quarter tied to a 16th, cut on the stronger boundary; no double dots. */
    @Test
    void theFewestShapesCutAtTheStrongerPlaceWin() {
        assertThat(shapes(FOUR, "5/16 r3/16 r1/2")).isEqualTo("4~16 r8. r2");
        assertThat(shapes(FOUR, "7/16 1/16 r1/2")).isEqualTo("4~8. 16 r2");
    }

    @ParameterizedTest
    @CsvSource({
        "3, 4, 1/4 3/8 1/8, 4 4. 8",
        "3, 4, 1/8 1/4 1/4 1/8, 8 4 4 8",
        "3, 4, 3/4, 2.",
        "5, 4, 5/4, 1~4",
        "2, 2, 1/4 1/2 1/4, 4 2 4",
    })
    void simpleMetresKeepTheirBeats(int counts, int unit, String rhythm, String expected) {
        assertThat(shapes(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: three-is-not-six: two dotted quarters are the beats of 6/8. */
    @ParameterizedTest
    @CsvSource({"3, 4, 3/8 3/8, 4. 8~4", "3, 2, 3/4 3/4, 2. 4~2", "3, 4, 1/4 1/8 3/8, 4 8 8~4"})
    void aBarOfThreeDoesNotLookLikeSix(int counts, int unit, String rhythm, String expected) {
        assertThat(shapes(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: compound-note-in-its-beat: a note leaves its group only to fill whole ones. */
    @ParameterizedTest
    @CsvSource({
        "6, 8, 3/4, 2.",
        "6, 8, 1/8 1/4 1/4 1/8, 8 4 4 8",
        "6, 8, 1/4 1/4 1/4, 4 8~8 4",
        "6, 8, 1/2 1/4, 4.~8 4",
        "9, 8, 9/8, 2.~4.",
        "12, 8, 3/2, 1.",
        "12, 8, 3/4 3/8 3/8, 2. 4. 4.",
        "12, 8, 3/8 9/8, 4. 4.~2.",
        "7, 8, 7/8, 2~4.",
        "7, 8, 1/8 1/4 1/8 3/8, 8 8~8 8 4.",
    })
    void compoundAndGroupedMetresCutAtTheirGroups(int counts, int unit, String rhythm, String expected) {
        assertThat(shapes(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: rests-show-beats, rests-in-three, no-dotted-rests: a half rest on beats 2 and 3 is wrong. */
    @ParameterizedTest
    @CsvSource({
        "4, 4, 1/4 r1/2 1/4, 4 r4 r4 4",
        "4, 4, 1/2 r1/2, 2 r2",
        "4, 4, r1/2 1/2, r2 2",
        "4, 4, 1/4 r3/4, 4 r4 r2",
        "4, 4, 1/16 r1/8 1/16 r1/4 1/2, 16 r16 r16 16 r4 2",
        "4, 4, 1/8 r1/4 1/8 1/2, 8 r8 r8 8 2",
        "3, 4, 1/4 r1/2, 4 r4 r4",
        "3, 4, r1/2 1/4, r4 r4 4",
        "2, 2, 1/4 r3/4, 4 r4 r2",
        "2, 2, 1/8 r3/8 1/2, 8 r8 r4 2",
    })
    void restsShowTheBeat(int counts, int unit, String rhythm, String expected) {
        assertThat(shapes(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: rests-compound: dotted quarter for a beat, quarter for its first two, never for its last. */
    @ParameterizedTest
    @CsvSource({
        "6, 8, 3/8 r3/8, 4. r4.",
        "6, 8, r1/4 1/8 3/8, r4 8 4.",
        "6, 8, 1/8 r1/4 3/8, 8 r8 r8 4.",
        "7, 8, 1/4 r5/8, 4 r4 r4.",
    })
    void compoundRestsShowTheirBeat(int counts, int unit, String rhythm, String expected) {
        assertThat(shapes(Meter.of(counts, unit), rhythm)).isEqualTo(expected);
    }

    /** rule: whole-bar-rest. */
    @Test
    void aSilentBarHasAWholeRestInEveryMetre() {
        for (var meter : List.of(FOUR, Meter.of(3, 4), Meter.of(6, 8), Meter.of(7, 8))) {
            var voice = Rhythms.bar(meter, List.of()).voices().get(0);
            assertThat(shapes(voice)).isEqualTo("R");
            assertThat(voice.elements().get(0).value()).isEqualTo(NoteValue.of(NoteValue.Base.WHOLE));
            assertThat(voice.elements().get(0).length()).isEqualTo(meter.length());
        }
    }
}
