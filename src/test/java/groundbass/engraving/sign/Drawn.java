package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sheet.Layout;
import groundbass.linetext.LineText;
import groundbass.writing.Writing;
import java.util.List;

/** A line of text as it is drawn on one page, for rules to be read off it. */
record Drawn(List<Mark> marks) {
    static Drawn of(String text) {
        return of(text, Staves.BOTH);
    }

    static Drawn of(String text, Staves staves) {
        return of(text, TestWords.options(Paper.A4).with(staves));
    }

    static Drawn of(String text, SheetOptions options) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        var plain = options.withLegend(false);
        return new Drawn(Layout.of(Writing.of(reading.line()), plain).get(0).marks());
    }

    /** In the order of drawing, which is that of time for marks of one kind. */
    List<Mark> of(Kind kind) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }

    Box box(Kind kind, int index) {
        return of(kind).get(index).box();
    }

    Point at(Kind kind, int index) {
        return ((Shape.Sign) of(kind).get(index).shape()).at();
    }

    /** The height of the first staff's top line. */
    double top() {
        var line = box(Kind.STAFF_LINE, 0);
        return (line.top() + line.bottom()) / 2;
    }

    /** A height as a staff position: 0 is the bottom line of five, 8 the top line (rule: staff-positions). */
    double position(double y) {
        return 8 - 2 * (y - top());
    }

    boolean stemUp(int index) {
        var stem = box(Kind.STEM, index);
        return stem.top() < at(Kind.HEAD, index).y() - 1;
    }

    List<String> texts(Kind kind) {
        return of(kind).stream()
                .filter(mark -> mark.shape() instanceof Shape.Run)
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .toList();
    }

    List<Glyph> glyphs(Kind kind) {
        return of(kind).stream()
                .filter(mark -> mark.shape() instanceof Shape.Sign)
                .map(mark -> ((Shape.Sign) mark.shape()).glyph())
                .toList();
    }
}
