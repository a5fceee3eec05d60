package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.spacing.LongRests;
import groundbass.linetext.LineText;
import groundbass.writing.Writing;
import java.util.List;
import org.junit.jupiter.api.Test;

/** rule: rests-together. */
class LongRestsTest {
    private static final String NOTE = "bar\n1-4  E0\n";
    private static final String REST = "bar\n1-4  rest\n";

    private static List<Integer> stretches(String text) {
        var bars = Writing.of(LineText.read(text).line()).bars();
        return LongRests.of(bars, true).stream().map(LongRests.Stretch::bars).toList();
    }

    private static List<Mark> marks(String text, Staves staves) {
        var options = TestWords.options(Paper.A4).with(staves).withRestsTogether(true);
        return Layout.of(Writing.of(LineText.read(text).line()), options).get(0).marks();
    }

    @Test // rule: rests-together
    void silentBarsThatFollowOneAnotherAreOneSign() {
        assertThat(stretches(NOTE + REST + REST + REST + NOTE + REST)).containsExactly(1, 3, 1, 1);
    }

    @Test // rule: rests-together: combine only if nothing falls within
    void whatFallsWithinKeepsThemApart() {
        for (var within : List.of("tempo 80\n", "section Out\n", "key D major\n", "new system\n")) {
            assertThat(stretches(REST + REST + within + REST + REST)).as(within).doesNotContain(4, 3);
        }
        assertThat(stretches(REST + "repeat start\n" + REST + REST + "repeat end\n" + REST))
                .containsExactly(1, 1, 1, 1);
        assertThat(stretches(REST + "bar over Am7\n1-4 rest\n" + REST)).containsExactly(1, 1, 1);
    }

    @Test
    void theyStandApartUnlessAskedFor() {
        var bars = Writing.of(LineText.read(REST + REST).line()).bars();
        assertThat(LongRests.of(bars, false)).hasSize(2);
    }

    @Test // rule: rests-together: hBarThickness 1.0, drawn with primitives; the number over the staff
    void theSignIsAsThickAsTheFontSays() {
        var rects = marks(NOTE + REST + REST + NOTE, Staves.NOTATION_ONLY).stream()
                .filter(mark -> mark.kind() == Kind.REST && mark.shape() instanceof Shape.Rect)
                .map(Mark::box)
                .toList();
        assertThat(rects).hasSize(3);
        var bar = rects.stream()
                .max((a, b) -> Double.compare(a.width(), b.width()))
                .orElseThrow();
        assertThat(bar.height()).isCloseTo(1.0, within(1e-9));
        var number = marks(NOTE + REST + REST + NOTE, Staves.NOTATION_ONLY).stream()
                .filter(mark -> mark.kind() == Kind.REST && mark.shape() instanceof Shape.Sign)
                .map(mark -> (Shape.Sign) mark.shape())
                .toList();
        assertThat(number).singleElement().satisfies(sign -> {
            assertThat(sign.glyph()).isEqualTo(Glyph.timeFigure(2));
            assertThat(sign.box().bottom()).isLessThan(bar.top());
        });
    }

    @Test
    void theBarsAfterItKeepTheirNumbers() {
        var text = NOTE + REST.repeat(7) + "new system\n" + NOTE;
        assertThat(marks(text, Staves.BOTH))
                .anyMatch(mark -> mark.kind() == Kind.BAR_NUMBER
                        && mark.shape() instanceof Shape.Run run
                        && run.text().equals("9"));
    }
}
