package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.remark.Severity;
import groundbass.score.Fraction;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import org.junit.jupiter.api.Test;

/** rule: legato-direction, legato-adjacent. */
class LegatoTest {
    @Test
    void aHammerDoesNotGoDown() {
        var line = Said.bars("""
                bar 1
                1   A5, A3 hammer
                2-4 rest
                """);
        var finding = Said.only(line, "hammer-not-up");
        assertThat(finding.severity()).isEqualTo(Severity.IMPOSSIBLE);
        assertThat(finding.notes()).containsExactly(new NoteAt(new Position(1, Fraction.of(1, 8)), 3));
        assertThat(Said.text(finding)).contains("from fret 5 to fret 3");
    }

    @Test
    void theHammerThatGoesDownIsRepairedByPulling() {
        var line = Said.bars("""
                bar 1
                1   A5, A3 hammer
                2-4 rest
                """);
        var repaired = Said.only(line, "hammer-not-up").repairs().get(0).applyTo(line);
        assertThat(Said.codes(repaired)).isEmpty();
        assertThat(LineText.print(repaired)).contains("A3 pull");
    }

    @Test
    void aHammerToTheSameFretIsStruck() {
        var line = Said.bars("""
                bar 1
                1   A5, A5 hammer
                2-4 rest
                """);
        var repaired = Said.only(line, "hammer-not-up").repairs().get(0).applyTo(line);
        assertThat(Said.codes(repaired)).isEmpty();
    }

    @Test
    void aPullDoesNotGoUp() {
        var line = Said.bars("""
                bar 1
                1   A3, A5 pull
                2-4 rest
                """);
        var finding = Said.only(line, "pull-not-down");
        assertThat(finding.severity()).isEqualTo(Severity.IMPOSSIBLE);
        assertThat(finding.repairs())
                .extracting(repair -> LineText.print(repair.applyTo(line)))
                .satisfiesExactly(
                        hammered -> assertThat(hammered).contains("A5 hammer"),
                        struck -> assertThat(struck).doesNotContain("hammer").doesNotContain("pull"));
    }

    @Test
    void aPullToTheSameFretIsStruck() {
        var line = Said.bars("""
                bar 1
                1   A5, A5 pull
                2-4 rest
                """);
        var repairs = Said.only(line, "pull-not-down").repairs();
        assertThat(repairs).hasSize(1);
        assertThat(LineText.print(repairs.get(0).applyTo(line))).doesNotContain("pull");
    }

    @Test
    void aGraceNoteIsTheSource() {
        var line = Said.bars("""
                bar 1
                1   A3 hammer from 5, A5 pull from 7
                2-4 rest
                """);
        assertThat(Said.codes(line)).containsExactly("hammer-not-up");
    }

    @Test
    void aSlideEndsOnAStoppedFret() {
        var line = Said.bars("""
                bar 1
                1   A3, A0 slide
                2-4 rest
                """);
        assertThat(Said.codes(line)).containsExactly("slide-open-string");
    }

    @Test
    void aHammerNeedsASoundingString() {
        var line = Said.bars("""
                bar 1
                1   A3
                2   rest
                3   A5 hammer
                4   Ax, A5 hammer
                """);
        assertThat(Said.codes(line)).containsExactly("legato-from-silence", "legato-from-dead");
    }

    @Test
    void swingDoesNotTearLegatoApart() {
        var line = Said.line("""
                meter 4/4
                feel swing 8ths 2:1
                strings E A D G

                bar 1
                1 2 3 4   A3, A5 hammer
                """);
        assertThat(Said.codes(line)).isEmpty();
    }

    @Test
    void aCopiedBarIsNotRemarkedOnAgain() {
        var line = Said.bars("""
                bar 1
                1   A5, A3 hammer
                2-4 rest
                bar 2 = bar 1
                """);
        assertThat(Said.codes(line)).containsExactly("hammer-not-up");
    }
}
