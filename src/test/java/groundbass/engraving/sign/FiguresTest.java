package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sign.around.Figures;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.writing.Writing;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class FiguresTest {
    private static final Line LINE = LineText.read(
                    "meter 4/4\nstrings E A D G\n\nbar 1\n1-4 A3, rest, D2+G3, A3\nbar 2\n1-4 hold, A3, Ax, A3\n")
            .line();

    private static List<String> figures(Function<Position, String> figures) {
        var options = TestWords.options(Paper.A4).withFigures(figures);
        return Layout.of(Writing.of(LINE), options).stream()
                .flatMap(page -> page.parts().stream())
                .flatMap(part -> part.marks().stream())
                .filter(mark -> mark.kind() == Kind.FIGURE)
                .map(mark -> ((Shape.Word) mark.shape()).text())
                .toList();
    }

    @Test
    void everyMomentAtWhichNotesBeginHasOneFigure() {
        assertThat(figures(moment -> moment.bar() + "-" + moment.at()))
                .containsExactly("1-0", "1-1/2", "1-3/4", "2-1/4", "2-1/2", "2-3/4");
    }

    @Test
    void accidentalsAreDrawnAndReadAsSuch() {
        assertThat(figures(moment -> "b7")).contains("♭7");
        assertThat(Figures.word("#11").box().width()).isPositive();
    }

    @Test
    void withoutFiguresNothingIsDrawn() {
        assertThat(figures(moment -> "")).isEmpty();
    }
}
