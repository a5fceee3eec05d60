package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;

/** The number of each system's first bar over its clef, but for the piece's first, or of every bar (rule: bar-numbers). */
public final class BarNumbers implements Concern {
    private static final double SIZE = 1.5;

    @Override
    public void draw(Sketch sketch) {
        var bars = sketch.plan().bars();
        if (bars.get(0).index() > 0) {
            number(sketch, bars.get(0));
        }
        if (sketch.options().aids().everyBar()) {
            bars.stream().filter(span -> !span.first()).forEach(span -> number(sketch, span));
        }
    }

    private static void number(Sketch sketch, BarSpan span) {
        var layer = sketch.upper();
        var run = new Shape.Run(
                Integer.toString(span.bar().number()), Face.ITALIC, SIZE, new Point(span.left() + 0.1, 0), Align.START);
        var box = run.box();
        double y = layer.top(box.left(), box.right()) - 0.5;
        layer.add(Kind.BAR_NUMBER, run.moved(0, y));
    }
}
