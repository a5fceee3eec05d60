package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSigns;
import groundbass.engraving.spacing.KeySignature;
import groundbass.engraving.spacing.TimeSignature;

/** Clef, key and meter at the head of a system (rule: system-opening), their changes inside it, and the warnings behind it. */
public final class Clefs implements Concern {
    @Override
    public void draw(Sketch sketch) {
        double x = BarSigns.CLEF_LEFT;
        if (sketch.options().staves().hasNotation()) {
            // the clef's dots enclose the line of F, the second from the top
            sketch.notation().add(Kind.CLEF, new Shape.Sign(Glyph.F_CLEF, new Point(x, Measures.y(6)), 1));
        }
        if (sketch.options().staves().hasTab()) {
            tabClef(sketch, x);
        }
        int first = sketch.plan().firstIndex();
        x += sketch.signs().clefWidth();
        if (sketch.options().staves().hasNotation() && sketch.signs().key(first).fifths() != 0) {
            x = key(sketch, first, 0, x);
        }
        if (sketch.signs().showsTime(first)) {
            time(sketch, first, x);
        }
        for (var span : sketch.plan().bars()) {
            if (!span.first()) {
                changes(sketch, span.index(), span.left());
            }
        }
        int next = sketch.plan().lastIndex() + 1;
        if (next < sketch.signs().size()) {
            var bars = sketch.plan().bars();
            changes(sketch, next, bars.get(bars.size() - 1).right());
        }
    }

    private static void changes(Sketch sketch, int index, double left) {
        double x = left;
        if (sketch.signs().showsKey(index) && sketch.options().staves().hasNotation()) {
            x = key(sketch, index, sketch.signs().cancelled(index), x);
        }
        if (sketch.signs().showsTime(index)) {
            time(sketch, index, x);
        }
    }

    private static double key(Sketch sketch, int index, int cancelled, double left) {
        double x = left + BarSigns.BETWEEN;
        int fifths = sketch.signs().key(index).fifths();
        KeySignature.shapes(fifths, cancelled, x)
                .forEach(shape -> sketch.notation().add(Kind.KEY, shape));
        return x + KeySignature.width(fifths, cancelled);
    }

    private static void time(Sketch sketch, int index, double left) {
        var layer = sketch.upper();
        TimeSignature.shapes(sketch.signs().meter(index), left + BarSigns.BETWEEN, layer.height() / 2)
                .forEach(shape -> layer.add(Kind.TIME, shape));
    }

    /** The font's clefs are made for lines one space apart (rule: tab-clef); ours stand wider. */
    private static void tabClef(Sketch sketch, double x) {
        var glyph = sketch.strings() > 5 ? Glyph.TAB_CLEF_SIX : Glyph.TAB_CLEF_FOUR;
        var box = MusicFont.bravura().box(glyph);
        double scale = Math.min(1.3, (sketch.tab().height() - 0.5) / box.height());
        double y = sketch.tab().height() / 2 - (box.top() + box.bottom()) / 2 * scale;
        sketch.tab().add(Kind.CLEF, new Shape.Sign(glyph, new Point(x + 0.2, y), scale));
    }
}
