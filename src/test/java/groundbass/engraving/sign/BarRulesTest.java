package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Barlines, repeats, endings, similes and bar numbers. */
class BarRulesTest {
    private static final String BAR = "bar\n1-4  E0, E1, E3, E5\n";

    private static List<Double> widths(Drawn drawn) {
        return drawn.of(Kind.BARLINE).stream().map(mark -> mark.box().width()).toList();
    }

    @Test // rule: barline-thickness: thin 0.16, thick 0.5, 0.4 between them
    void theLastBarlineIsThinAndThick() {
        var drawn = Drawn.of(BAR);
        int last = drawn.of(Kind.BARLINE).size() - 1;
        assertThat(widths(drawn).get(last)).isCloseTo(0.5, within(1e-9));
        assertThat(widths(drawn).get(last - 1)).isCloseTo(0.16, within(1e-9));
        double gap = drawn.box(Kind.BARLINE, last).left()
                - drawn.box(Kind.BARLINE, last - 1).right();
        assertThat(gap).isCloseTo(0.4, within(1e-9));
    }

    @Test // rule: repeat-dots: in spaces 2 and 3, positions 3 and 5; 0.16 from the line
    void repeatDotsStandInTheMiddleSpaces() {
        var drawn = Drawn.of("repeat start\n" + BAR + "repeat end\n", Staves.NOTATION_ONLY);
        var dots = drawn.of(Kind.REPEAT_DOT);
        assertThat(dots).hasSize(4);
        assertThat(dots.stream()
                        .map(dot -> Math.round(
                                drawn.position((dot.box().top() + dot.box().bottom()) / 2)))
                        .distinct())
                .containsExactlyInAnyOrder(3L, 5L);
        double gap = drawn.of(Kind.BARLINE).stream()
                .mapToDouble(line -> line.box().left() - dots.get(3).box().right())
                .filter(distance -> distance > 0)
                .min()
                .orElseThrow();
        assertThat(gap).isCloseTo(0.16, within(0.01));
    }

    @Test // rule: repeat-dots: on four lines around the middle, in spaces 1 and 3 or a pair
    void repeatDotsOfTheTablatureStandAroundItsMiddle() {
        var drawn = Drawn.of("repeat start\n" + BAR + "repeat end\n", Staves.TAB_ONLY);
        double middle = drawn.top() + 1.5 * Measures.TAB_GAP;
        var heights = drawn.of(Kind.REPEAT_DOT).stream()
                .map(dot -> (dot.box().top() + dot.box().bottom()) / 2 - middle)
                .sorted()
                .toList();
        assertThat(heights).hasSize(4);
        double away = heights.get(3);
        assertThat(away).matches(height -> height < Measures.TAB_GAP / 2 || Math.abs(height - Measures.TAB_GAP) < 0.01);
        for (int dot = 0; dot < 4; dot++) {
            assertThat(heights.get(dot)).isCloseTo(dot < 2 ? -away : away, within(0.01));
        }
    }

    @Test // rule: ending-brackets: the first ending is closed at both ends, the last open at its right; lines of 0.16
    void theLastEndingStaysOpen() {
        var text = "repeat start\n" + BAR + "ending 1\n" + BAR + "ending end\nrepeat end\nending 2\n" + BAR
                + "ending end\n";
        var strokes = Drawn.of(text).of(Kind.ENDING).stream()
                .filter(mark -> mark.shape() instanceof Shape.Stroke)
                .map(mark -> (Shape.Stroke) mark.shape())
                .toList();
        assertThat(strokes).isNotEmpty().allSatisfy(stroke -> assertThat(stroke.thickness())
                .isEqualTo(0.16));
        assertThat(strokes.stream()
                        .filter(stroke -> stroke.from().x() == stroke.to().x()))
                .hasSize(3);
        assertThat(Drawn.of(text).texts(Kind.ENDING)).containsExactly("1.", "2.");
    }

    @Test // rule: simile-signs: centred in an otherwise empty bar; the first of a system in full
    void aSimileStandsInTheMiddleOfAnEmptyBar() {
        var options = TestWords.options(Paper.A4).withSimile(true);
        var drawn = Drawn.of("bar 1\n1-4  E0, E1, E3, E5\nbar 2 = bar 1\nbar 3 = bar 2\n", options);
        assertThat(drawn.of(Kind.SIMILE)).hasSize(4);
        assertThat(drawn.of(Kind.HEAD)).hasSize(4);
        double left = drawn.box(Kind.BARLINE, 1).right();
        double right = drawn.box(Kind.BARLINE, 2).left();
        assertThat(drawn.box(Kind.SIMILE, 0).middle()).isCloseTo((left + right) / 2, within(0.3));
        var broken = Drawn.of("bar 1\n1-4  E0, E1, E3, E5\nnew system\nbar 2 = bar 1\n", options);
        assertThat(broken.of(Kind.SIMILE)).isEmpty();
    }

    @Test // rule: bar-numbers: at each system's start, over the clef, but for the first; a pickup is bar 0 and has none
    void barNumbersStandOverTheClefOfLaterSystems() {
        var drawn = Drawn.of(BAR + BAR + "new system\n" + BAR + "new system\n" + BAR);
        assertThat(drawn.texts(Kind.BAR_NUMBER)).containsExactly("3", "4");
        assertThat(drawn.box(Kind.BAR_NUMBER, 0).bottom())
                .isLessThan(drawn.box(Kind.CLEF, 2).top());
        assertThat(Drawn.of("bar 0\n4  E0\n" + BAR).texts(Kind.BAR_NUMBER)).isEmpty();
    }

    /** rule: jump-signs, jumps-unfold. */
    @Test
    void jumpsStandOverTheEndsOfTheirBars() {
        var drawn = Drawn.of(BAR + "segno\n" + BAR + "to coda\n" + BAR + "dal segno al coda\ncoda\nnew system\n" + BAR);
        assertThat(drawn.texts(Kind.JUMP)).containsExactly("To Coda", "D.S. al Coda");
        // SMuFL: segno U+E047, coda U+E048; the second coda is the place itself
        assertThat(drawn.glyphs(Kind.JUMP)).containsExactly(Glyph.SEGNO, Glyph.CODA, Glyph.CODA);
        assertThat(Glyph.SEGNO.codePoint()).isEqualTo(0xE047);
        assertThat(Glyph.CODA.codePoint()).isEqualTo(0xE048);
        var lines = drawn.of(Kind.BARLINE).stream().map(Mark::box).toList();
        var segno = drawn.box(Kind.JUMP, 0);
        assertThat(segno.left()).isCloseTo(lines.get(1).left(), within(1.0));
        assertThat(segno.bottom()).isLessThan(drawn.top());
        var jump = drawn.box(Kind.JUMP, 3);
        var last = lines.get(lines.size() - 4);
        assertThat(jump.right()).isCloseTo(last.right(), within(0.6));
        // a double bar line after the jump: two thin lines
        assertThat(lines.get(lines.size() - 5).width()).isCloseTo(0.16, within(1e-9));
        assertThat(last.left() - lines.get(lines.size() - 5).right()).isCloseTo(0.4, within(1e-9));
    }

    /** rule: jump-signs: Fine ends with a double line, the jump after it with the final one. */
    @Test
    void fineEndsWithItsBar() {
        var drawn = Drawn.of(BAR + "fine\n" + BAR + "da capo al fine\n");
        assertThat(drawn.texts(Kind.JUMP)).containsExactly("Fine", "D.C. al Fine");
        assertThat(widths(drawn)).hasSize(5);
        assertThat(drawn.box(Kind.JUMP, 0).right())
                .isCloseTo(drawn.box(Kind.BARLINE, 2).right(), within(0.01));
        assertThat(drawn.box(Kind.JUMP, 0).bottom()).isLessThan(drawn.top());
    }

    /** rule: ending-brackets: a number of times is no higher over a plain repeat because another one has brackets. */
    @Test
    void howOftenStandsOverItsOwnEnd() {
        var plain = "repeat start\n" + BAR + "repeat end x8\n";
        var ended = "repeat start\n" + BAR + "ending 1-3\n" + BAR + "repeat end x4\nending 4\n" + BAR + "ending end\n";
        var drawn = Drawn.of(ended + plain);
        var times = drawn.of(Kind.ENDING).stream()
                .filter(mark ->
                        mark.shape() instanceof Shape.Run run && run.text().endsWith("times"))
                .map(Mark::box)
                .toList();
        assertThat(times).hasSize(2);
        assertThat(times.get(1).bottom()).isGreaterThan(times.get(0).bottom() + 1);
    }
}
