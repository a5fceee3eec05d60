package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What the first step says of form, counting, places on the neck and practice (common practice, no source). */
class PracticePlanTest {
    private static final String HEAD = "meter 4/4\ntempo %d\nstrings E A D G\nstyle finger\n\n";
    private static final String FOURS = "bar %d\n1 E3, E3, E3, E3\n2-4 E5\n";

    /** Sixteenths at 150 quarters a minute are ten a second; four a second are 40 percent of that. */
    @Test
    void theFastestBeatSetsTheTempoToBeginWith() {
        assertThat(opening(HEAD.formatted(150) + FOURS.formatted(1)))
                .endsWith("Begin slowly: set the metronome to 60.");
    }

    /** At 60 they are four a second already: nothing is hard, and slower than written is still the way to begin. */
    @Test
    void aSlowLineBeginsALittleSlower() {
        assertThat(opening(HEAD.formatted(60) + "bar 1\n1-4 E3\n")).endsWith("Begin slowly: set the metronome to 48.");
        assertThat(closing(HEAD.formatted(60) + "bar 1\n1-4 E3\n"))
                .isEqualTo("Take breaks, and stop if anything hurts.");
    }

    /**
     * A click on quarters falls between the counts in every second bar of 7/8. The scale of metronomes: 40 to 60 by twos, 72
     * by threes, 120 by fours, 144 by sixes, 208 by eights (common practice, no source).
     */
    @Test
    void theMetronomeIsSetToAStepThatItHasAndClicksOnCounts() {
        assertThat(opening("meter 7/8\ntempo 100 quarter\nstrings E A D G\nstyle finger\n\nbar 1\n1-7 E3\n"))
                .endsWith(
                        "set the metronome to 160, with a click on each count you count aloud; the tempo of the line is 200 such clicks a minute.");
        assertThat(opening(HEAD.formatted(66) + "bar 1\n1-4 E3\n")).endsWith("set the metronome to 52.");
        assertThat(opening(HEAD.formatted(84) + "bar 1\n1-4 E3\n")).endsWith("set the metronome to 66.");
        assertThat(opening(HEAD.formatted(132) + "bar 1\n1-4 E3\n")).endsWith("set the metronome to 104.");
    }

    /** Sixteenths in one bar of two, at 100 quarters a minute almost seven a second. */
    @Test
    void theQuickBarsTakeMostTime() {
        assertThat(closing(HEAD.formatted(100) + FOURS.formatted(1) + "bar 2\n1-4 E3\n"))
                .startsWith("Give most of your time to bar 1, where the notes come quickest.");
        assertThat(closing(HEAD.formatted(100)
                        + FOURS.formatted(1)
                        + FOURS.formatted(2).replace("E3", "E4")))
                .doesNotContain("Give most of your time");
    }

    @Test
    void oneCountsAsFinelyAsNotesBegin() {
        assertThat(opening(HEAD.formatted(60) + FOURS.formatted(1)))
                .contains("Count aloud: 1 e & a 2 e & a 3 e & a 4 e & a.");
        assertThat(opening(HEAD.formatted(60) + "bar 1\n1 E3, E3\n2-4 E5\n")).contains("Count aloud: 1 & 2 & 3 & 4 &.");
        assertThat(opening(HEAD.formatted(60) + "bar 1\n1-2 E3\n3-4 E5\n")).contains("Count aloud: 1 2 3 4.");
        assertThat(opening("meter 12/8\ntempo 60\nstrings E A D G\nstyle finger\n\nbar 1\n1-12 E3\n"))
                .contains("Count aloud: 1 2 3 · 4 5 6 · 7 8 9 · 10 11 12.");
    }

    /** Six eighths of 6/8 are on its counts, and say nothing of how a bar of 4/4 is counted. */
    @Test
    void aBarOfAnotherMeterDoesNotDivideTheCounts() {
        String changed = "bar 1\n1-4 E3\nmeter 6/8\nbar 2\n1 E3\n2 E3\n3 E3\n4 E3\n5 E3\n6 E3\n";
        assertThat(opening(HEAD.formatted(60) + changed)).contains("Count aloud: 1 2 3 4.");
    }

    /** What is tapped the plucking hand stops, and what is struck together one grip holds. */
    @Test
    void noShiftIsToldWhereTheHandStays() {
        assertThat(told(HEAD.formatted(60) + "bar 1\n1-2 E5\n3-4 E12 tap\n"))
                .noneMatch(text -> text.contains("further to go"));
        assertThat(told(HEAD.formatted(60) + "bar 1\n1-2 E3 + G9\n3-4 E3 + G9\n"))
                .noneMatch(text -> text.contains("further to go"));
        assertThat(told(HEAD.formatted(60) + "bar 1\n1-2 E5\n3-4 E12\n"))
                .anyMatch(text -> text.startsWith("Bar 1, beats 3 and 4")
                        && text.contains("The fretting hand never has further to go in this line."));
        assertThat(told(HEAD.formatted(60) + "bar 1\n1-2 E5\n3-4 E12\nbar 2\n1-2 E5\n3-4 E0\n"))
                .as("two are as wide")
                .noneMatch(text -> text.contains("further to go"));
    }

    @Test
    void aPickupIsNoBar() {
        var told = told(HEAD.formatted(60) + "section Quay\nbar 0\n4 E3\nbar 1\n1-4 E3\nbar 2\n1-4 E5\n");
        assertThat(told.get(0)).startsWith("2 bars, “Quay”.");
    }

    @Test
    void theFormComesFirst() {
        assertThat(opening(HEAD.formatted(60)
                        + "section Quay\nbar 1\n1-4 E3\nbar 2\n1-4 E3\nsection Tide\nbar 3\n1-4 E5\n"))
                .startsWith("3 bars: “Quay” (bars 1 and 2) and “Tide” (bar 3).");
        assertThat(closing(HEAD.formatted(60)
                        + "section Quay\nbar 1\n1-4 E3\nbar 2\n1-4 E3\nsection Tide\nbar 3\n1-4 E5\n"))
                .startsWith("When you practise, learn “Quay”, then “Tide”, then all of it.");
    }

    /** A walking line of nine bars at one go is too much. */
    @Test
    void aLongPartIsLearntFourBarsAtATime() {
        var bars = new StringBuilder("section Quay\n");
        for (int i = 1; i <= 9; i++) {
            bars.append("bar ")
                    .append(i)
                    .append("\n1-3 E")
                    .append(i)
                    .append("\n4 A")
                    .append(i + 2)
                    .append("\n");
        }
        assertThat(closing(HEAD.formatted(60) + bars + "section Tide\nbar 10\n1-4 E0\n"))
                .startsWith("When you practise, learn “Quay” (four bars at a time), then “Tide”, then all of it.");
    }

    /** One finger a fret: frets 3 to 6 lie under one hand, 7 and 9 do not; 12 is out of reach from 3. */
    @Test
    void aPositionIsToldWhereTheHandMoves() {
        var told = told(HEAD.formatted(60)
                + "bar 1\n1-2 E3\n3-4 E5\nbar 2\n1-2 A3\n3-4 A6\nbar 3\n1-2 E7\n3-4 E9\nbar 4\n1-2 E3\n3-4 E12\n");
        assertThat(told.get(1)).startsWith("Bar 1. Hand in position, index finger at fret 3, one finger per fret. ");
        assertThat(told).noneMatch(text -> text.startsWith("Bar 2") && text.contains("shift"));
        assertThat(told)
                .anyMatch(text -> text.startsWith("Bar 3. Shift: index finger at fret "))
                .anyMatch(text -> text.startsWith("Bar 4. ") && text.contains(" Then shift: index finger at fret "));
    }

    /** A slide takes the hand along: from fret 3 with the index finger to fret 5, where it plays on (common practice). */
    @Test
    void aSlideIsNoShift() {
        var told = told(HEAD.formatted(60) + "bar 1\n1 A3 with 1\n2 A5 slide with 1\n3 A7 with 3\n4 D5 with 1\n");
        assertThat(told).noneMatch(text -> text.contains("hift"));
    }

    private static String closing(String text) {
        var told = told(text);
        return told.get(told.size() - 1);
    }

    private static String opening(String text) {
        return told(text).get(0);
    }

    private static List<String> told(String text) {
        return Walkthrough.of(LineText.read(text).line(), Messages.of(Locale.ENGLISH)).stream()
                .map(Step::text)
                .toList();
    }
}
