package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.remark.Span;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import org.junit.jupiter.api.Test;

class ProblemTest {
    @Test
    void aProblemNamesFoundAndExpectedAndWhatToDo() {
        assertThat(Told.of(LineText.read("a.line", "bar 1\n1-3  E5\n"))).isEqualTo("""
                        a.line:2:1: error: Bar 1 leaves count 4 unsaid; write “4  rest”, “4  hold”, or let the line before it span it.
                            1-3  E5
                            ^^^
                        """);
    }

    @Test
    void caretsStandBelowTheirSpanAfterTabs() {
        assertThat(Told.of(LineText.read("bar 1\n1-4\tE99\n"))).isEqualTo("""
                        2:5: error: Fret 99 on string E; this neck has frets 0 to 24. Did you mean 9?
                            1-4 E99
                                ^^^
                        """);
    }

    @Test
    void aProblemFarToTheRightIsShownInItsSurroundings() {
        var reading = LineText.read("bar 1\n1-4 " + "E5, ".repeat(150) + "E99\n");
        var lines = Told.of(reading).split("\n");
        assertThat(lines[1].substring(lines[2].indexOf('^'))).isEqualTo("E99");
        assertThat(lines[1].length()).isLessThan(250);
    }

    @Test
    void problemsStandInTheOrderOfTheText() {
        var reading = LineText.read("repeat start\nbar 1\n1 E99\nbar 5\n1-4 Q\n");
        assertThat(reading.problems()).isSortedAccordingTo((a, b) -> a.span().compareTo(b.span()));
        assertThat(reading.problems()).hasSize(5);
    }

    @Test
    void originsLeadFromTheLineToTheText() {
        var origins = LineText.read("a.line", LanternStreetTest.TEXT).origins();
        assertThat(origins.bar(2)).contains(new Span(17, 1, 23));
        assertThat(LineText.read("bar 1  # a remark\n1-4 rest").origins().bar(1))
                .contains(new Span(1, 1, 5));
        assertThat(origins.note(1, Fraction.of(3, 16), 4)).contains(new Span(11, 10, 2));
        assertThat(origins.note(3, Fraction.ZERO, 3)).contains(new Span(24, 7, 7));
        assertThat(origins.setting("tempo")).contains(new Span(5, 1, 10));
        assertThat(origins.at(new Position(2, Fraction.of(1, 2)))).isEqualTo(new Span(20, 6, 11));
        assertThat(origins.barAt(20)).contains(2);
        assertThat(origins.positionAt(11, 11)).contains(new Position(1, Fraction.of(3, 16)));
        assertThat(origins.in(Passage.bar(2))).hasSize(6);
    }
}
