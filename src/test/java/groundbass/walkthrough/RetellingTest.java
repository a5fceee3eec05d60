package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import groundbass.walkthrough.Retelling.Edit;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Words stay with their notes, whatever happens elsewhere in the line. */
class RetellingTest {
    private static final String HEAD = """
            key     C major
            meter   4/4
            tempo   60
            strings E A D G
            style   finger

            """;
    private static final String CALL = "1 A3, A5\n2 A7\n3-4 D5\n";
    private static final String ANSWER = "1 G5, G4\n2 G2\n3-4 D5\n";

    private static final List<Step> BEFORE = told(HEAD + "bar 1\n" + CALL + "bar 2\n" + ANSWER);

    @Test
    void anEditReplacesItsSentenceAndNothingElse() {
        var retelling = Retelling.of(BEFORE, List.of(edit(BEFORE, 1, "Begin low.")));
        assertThat(retelling.read().get(1).text()).isEqualTo("Begin low.");
        assertThat(retelling.read().get(2)).isEqualTo(BEFORE.get(2));
        assertThat(retelling.lost()).isEmpty();
    }

    @Test
    void anEditSurvivesABarInsertedBefore() {
        var after = told(HEAD + "bar 1\n1-4 E0\nbar 2\n" + CALL + "bar 3\n" + ANSWER);
        var retelling = Retelling.of(after, List.of(edit(BEFORE, 4, "Answer from above.")));
        assertThat(bars(retelling, "Answer from above.")).containsExactly(3);
    }

    @Test
    void anEditSurvivesAChangeElsewhereInItsBar() {
        var after = told(HEAD + "bar 1\n1 A3, A5\n2 A8\n3-4 D5\nbar 2\n" + ANSWER);
        var retelling = Retelling.of(after, List.of(edit(BEFORE, 1, "Begin low.")));
        assertThat(bars(retelling, "Begin low.")).containsExactly(1);
    }

    @Test
    void anEditWhoseNotesChangedIsToldAsLost() {
        var after = told(HEAD + "bar 1\n1 A3, A6\n2 A7\n3-4 D5\nbar 2\n" + ANSWER);
        var edit = edit(BEFORE, 1, "Begin low.");
        var retelling = Retelling.of(after, List.of(edit));
        assertThat(retelling.lost()).containsExactly(edit);
        assertThat(retelling.read()).isEqualTo(after);
    }

    @Test
    void ofTwoStepsWithTheSameNotesTheOneWithTheSameNeighboursKeepsTheWords() {
        // bar 2 ends with the notes that bar 1 ends with: only what stands before them tells the two apart
        var edit = edit(BEFORE, 6, "Let the D ring.");
        assertThat(BEFORE.get(6).anchor().own())
                .isEqualTo(BEFORE.get(3).anchor().own());
        var after = told(HEAD + "bar 1\n1-4 E0\nbar 2\n" + CALL + "bar 3\n" + ANSWER);
        assertThat(bars(Retelling.of(after, List.of(edit)), "Let the D ring.")).containsExactly(3);
    }

    /** Bar 1 is gone, and bar 2, which ends with the same note, stands alone: its own words stay with it. */
    @Test
    void wordsOfABarThatIsGoneDoNotTakeThePlaceOfOthers() {
        var gone = edit(BEFORE, 3, "The first D.");
        var kept = edit(BEFORE, 6, "The second D.");
        var retelling = Retelling.of(told(HEAD + "bar 1\n1-4 E0\nbar 2\n" + ANSWER), List.of(gone, kept));
        assertThat(bars(retelling, "The second D.")).containsExactly(2);
        assertThat(retelling.lost()).containsExactly(gone);
    }

    @Test
    void anAnchorIsReadAsItWasWritten() {
        for (var step : BEFORE) {
            assertThat(Anchor.parse(step.anchor().toString())).contains(step.anchor());
        }
        assertThat(Anchor.parse("nonsense")).isEmpty();
    }

    @Test
    void anAnchorKnowsNothingOfTheLanguage() {
        var german = Walkthrough.of(LineText.read(HEAD + "bar 1\n" + CALL).line(), Messages.of(Locale.GERMAN));
        var english = told(HEAD + "bar 1\n" + CALL);
        assertThat(german)
                .extracting(Step::anchor)
                .isEqualTo(english.stream().map(Step::anchor).toList());
    }

    private static Edit edit(List<Step> steps, int index, String sentence) {
        var step = steps.get(index);
        return new Edit(step.anchor(), step.passage().from().bar(), sentence);
    }

    private static List<Integer> bars(Retelling retelling, String sentence) {
        return retelling.read().stream()
                .filter(step -> step.text().equals(sentence))
                .map(step -> step.passage().from().bar())
                .toList();
    }

    private static List<Step> told(String text) {
        return Walkthrough.of(LineText.read(text).line(), Messages.of(Locale.ENGLISH));
    }
}
