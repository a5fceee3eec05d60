package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The signs of jumps over the upper staff: segno and coda at the left of the bar that they begin, what leads away at the
 * right of the bar that it follows (rule: jump-signs).
 */
public final class Jumps implements Concern {
    private static final double GAP = 0.6;
    private static final double BETWEEN = 0.8;
    private static final double SIZE = 2.1;
    private static final double SEGNO_SCALE = 0.8;
    private static final double CODA_SCALE = 0.75;
    private static final double SMALL_CODA_SCALE = 0.55;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(BETWEEN);
        for (var span : sketch.plan().bars()) {
            before(sketch, span).forEach(shape -> row.add(Kind.JUMP, Optional.empty(), List.of(shape)));
            var after = after(sketch, span);
            row.add(Kind.JUMP, Optional.empty(), after);
        }
        row.placeAbove(sketch.upper(), GAP);
    }

    private static List<Shape> before(Sketch sketch, BarSpan span) {
        var roadmap = sketch.written(span).bar().repeats().roadmap();
        var shapes = new ArrayList<Shape>();
        double x = span.first() ? span.start() : span.left();
        if (roadmap.segno()) {
            shapes.add(sign(Glyph.SEGNO, x, SEGNO_SCALE));
            x = shapes.get(0).box().right() + BETWEEN;
        }
        if (roadmap.coda()) {
            shapes.add(sign(Glyph.CODA, x, CODA_SCALE));
        }
        return shapes;
    }

    /** From the right to the left, so that the last of them ends with the bar. */
    private static List<Shape> after(Sketch sketch, BarSpan span) {
        var roadmap = sketch.written(span).bar().repeats().roadmap();
        var shapes = new ArrayList<Shape>();
        double right = span.right();
        if (roadmap.jump().isPresent()) {
            right = words(shapes, roadmap.jump().get().printed(), right);
        }
        if (roadmap.fine()) {
            right = words(shapes, "Fine", right);
        }
        if (roadmap.toCoda()) {
            double width = MusicFont.bravura().width(Glyph.CODA) * SMALL_CODA_SCALE;
            shapes.add(sign(Glyph.CODA, right - width, SMALL_CODA_SCALE));
            words(shapes, sketch.options().words().toCoda(), right - width - BETWEEN / 2);
        }
        return shapes;
    }

    /** Where the words begin, and room before them. */
    private static double words(List<Shape> shapes, String text, double right) {
        var run = new Shape.Run(text, Face.ITALIC, SIZE, new Point(right, 0), Align.END);
        shapes.add(run);
        return run.box().left() - BETWEEN;
    }

    /** A sign with its foot on the baseline. */
    private static Shape sign(Glyph glyph, double x, double scale) {
        var box = MusicFont.bravura().box(glyph);
        return new Shape.Sign(glyph, new Point(x - box.left() * scale, -box.bottom() * scale), scale);
    }
}
