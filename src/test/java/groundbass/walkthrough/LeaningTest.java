package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * A teacher says what stays and what changes: beats that were played before are told by their bar. Which beats are alike
 * was worked out by hand from the places on the neck (common practice, no source).
 */
class LeaningTest {
    private static final String FIRST = """
            strings E A D G
            style   finger
            tempo   60

            bar 1
            1    E3, E3
            2    E3, A5
            3    E3, E3
            4    A5, A3

            """;

    @Test
    void onlyTheBeatThatChangesIsToldAnew() {
        assertThat(bar("bar 2\n1 E3, E3\n2 E3, A5\n3 E3, E3\n4 D5, D3\n"))
                .containsExactly(
                        "Bar 2, beats 1 to 3: as bar 1.", "Bar 2, beat 4: play G, then F (D string, frets 5 and 3).");
    }

    @Test
    void whatChangesInTheMiddleStandsBetween() {
        assertThat(bar("bar 2\n1 A3, A3\n2 A3, D5\n3 rest\n4 D5, D3\n"))
                .containsExactly(
                        "Bar 2, beats 1 and 2: the same shape as bar 1, one string higher, starting on C.",
                        "Bar 2, beat 3: rest.",
                        "Bar 2, beat 4: play G, then F (D string, frets 5 and 3).");
    }

    @Test
    void lessThanAThirdOfABarIsNotWorthIt() {
        assertThat(bar("bar 2\n1 E3, E3\n2 E5, E7\n3 E8, E7\n4 E5, E3\n")).noneMatch(text -> text.contains("as bar"));
    }

    /** Open E and A are a fourth apart on any neck; the fifth fret of neither follows them up. */
    @Test
    void anOpenStringDoesNotMoveUpTheNeck() {
        String open = "strings E A D G\nstyle finger\n\nbar 1\n1 E0, E2\n2 E0, E2\n3 E3\n4 E3\n\n";
        assertThat(told(open + "bar 2\n1 E2, E4\n2 E2, E4\n3 E0\n4 E0\n")).noneMatch(text -> text.contains("as bar 1"));
        assertThat(told(open + "bar 2\n1 A0, A2\n2 A0, A2\n3 E0\n4 E0\n"))
                .contains("Bar 2, beats 1 and 2: the same shape as bar 1, one string higher, starting on A.");
    }

    /** From the lowered low string to the A it is a fifth, from there on a fourth: one shape, two intervals. */
    @Test
    void aShapeThatSoundsOtherwiseIsNotTheSame() {
        String dropped = "strings E=D A D G\nstyle finger\n\nbar 1\n1 E3, A5\n2 E3, A5\n3 E3\n4 E3\n\n";
        assertThat(told(dropped + "bar 2\n1 A3, D5\n2 A3, D5\n3 rest\n4 A1\n"))
                .noneMatch(text -> text.contains("as bar 1"));
    }

    /** Bar 3 begins as bar 2, which leans on bar 1, and is no further from it than from bar 1. */
    @Test
    void aShapeIsMovedFromABarThatWasToldWhole() {
        var told = told(
                FIRST
                        + "bar 2\n1 A3, A3\n2 A3, D5\n3 A3, A3\n4 D7, D3\n\nbar 3\n1 D3, D3\n2 D3, G5\n3 D5, D3\n4 D5, D2\n\nbar 4\n1 A3, A3\n2 A3, D5\n3 E5, E5\n4 D5, D3\n");
        assertThat(told)
                .anyMatch(text -> text.startsWith(
                        "Bar 2, beats 1 to 3: the same shape as bar 1, one string higher, starting on C."));
        assertThat(told)
                .anyMatch(text -> text.startsWith(
                        "Bar 3, beats 1 and 2: the same shape as bar 1, two strings higher, starting on F."));
        assertThat(told)
                .as("not by bar 2, which is told by bar 1 itself")
                .anyMatch(text ->
                        text.startsWith("Bar 4. ") && text.contains(" Beats 1 and 2: the same shape as bar 1, "));
    }

    @Test
    void aNoteThatIsHeldLongerIsAnotherBeat() {
        assertThat(bar("bar 2\n1 E3, E3\n2 E3, A5\n3-4 E3\n")).first().isEqualTo("Bar 2, beats 1 and 2: as bar 1.");
        assertThat(bar("bar 2\n1 E3, E3\n2-4 E3\n")).noneMatch(text -> text.contains("as bar"));
    }

    private static List<String> bar(String second) {
        return told(FIRST + second).stream()
                .filter(text -> text.startsWith("Bar 2"))
                .toList();
    }

    private static List<String> told(String text) {
        return Walkthrough.of(LineText.read(text).line(), Messages.of(Locale.ENGLISH)).stream()
                .map(Step::text)
                .toList();
    }
}
