package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Rect;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSigns;
import java.util.ArrayList;
import java.util.List;

/** Lines and repeat signs between bars, through both staves (rule: joined-barlines). Drawn when the distance of the staves is known. */
public final class Barlines {
    private final Sketch sketch;
    private final double top;
    private final double bottom;
    private final double tabTop;
    private final List<Mark> marks = new ArrayList<>();

    /** @param tabTop where the tablature's first line is, on the system */
    public Barlines(Sketch sketch, double tabTop) {
        this.sketch = sketch;
        this.tabTop = tabTop;
        this.top = sketch.options().staves().hasNotation() ? 0 : tabTop;
        this.bottom = sketch.options().staves().hasTab() ? tabTop + sketch.tab().height() : Measures.STAFF_HEIGHT;
    }

    public List<Mark> marks() {
        line(0, Measures.THIN_BARLINE);
        for (var span : sketch.plan().bars()) {
            if (sketch.signs().opensRepeat(span.index(), span.first())) {
                open(span.start() - BarSigns.REPEAT);
            }
            close(span.closing(), span.end());
        }
        return marks;
    }

    private void close(BarSigns.Closing closing, double x) {
        switch (closing) {
            case NOTHING -> {}
            case SINGLE -> line(x, Measures.THIN_BARLINE);
            case DOUBLE -> {
                line(x, Measures.THIN_BARLINE);
                line(x + Measures.THIN_BARLINE + Measures.BARLINE_GAP, Measures.THIN_BARLINE);
            }
            case FINAL -> thinThick(x);
            case REPEAT -> repeat(x);
            case REPEAT_BOTH -> {
                double thick = repeat(x);
                open(thick);
            }
        }
    }

    private void thinThick(double x) {
        line(x, Measures.THIN_BARLINE);
        line(x + Measures.THIN_BARLINE + Measures.BARLINE_GAP, Measures.THICK_BARLINE);
    }

    /** Where the thick line begins. */
    private double repeat(double x) {
        dots(x);
        double thin = x + Measures.REPEAT_DOT + Measures.REPEAT_DOT_GAP;
        thinThick(thin);
        return thin + Measures.THIN_BARLINE + Measures.BARLINE_GAP;
    }

    private void open(double x) {
        line(x, Measures.THICK_BARLINE);
        double thin = x + Measures.THICK_BARLINE + Measures.BARLINE_GAP;
        line(thin, Measures.THIN_BARLINE);
        dots(thin + Measures.THIN_BARLINE + Measures.REPEAT_DOT_GAP);
    }

    /** In the spaces around the middle line, and around the middle of the tablature (rule: repeat-dots). */
    private void dots(double x) {
        if (sketch.options().staves().hasNotation()) {
            dot(x, 1.5);
            dot(x, 2.5);
        }
        if (sketch.options().staves().hasTab()) {
            double middle = tabTop + sketch.tab().height() / 2;
            double apart = sketch.strings() % 2 == 0 ? Measures.TAB_GAP : Measures.TAB_GAP / 2;
            dot(x, middle - apart);
            dot(x, middle + apart);
        }
    }

    private void dot(double x, double y) {
        marks.add(Mark.free(Kind.REPEAT_DOT, new Shape.Sign(Glyph.REPEAT_DOT, new Point(x, y), 1)));
    }

    private void line(double x, double thickness) {
        double half = Measures.STAFF_LINE / 2;
        marks.add(Mark.free(Kind.BARLINE, new Rect(new Box(x, top - half, x + thickness, bottom + half))));
    }
}
