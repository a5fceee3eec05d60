package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Stroke;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The octave sign with its dashed line over what sounds an octave higher; it is said again on each system. */
public final class OttavaSigns implements Concern {
    private static final double GAP = 0.5;
    private static final double SCALE = 0.8;
    private static final double DASH = 0.8;
    private static final double HOOK = 0.9;

    /** rule: font-thickness: octaveLineThickness. */
    private static final double LINE = 0.16;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.3);
        var run = new ArrayList<Spot>();
        for (var spot : sketch.spots()) {
            if (spot.cell().isRest()) {
                continue;
            }
            if (spot.column().raised()) {
                run.add(spot);
            } else {
                add(row, run);
            }
        }
        add(row, run);
        row.placeAbove(sketch.upper(), GAP);
    }

    private static void add(Row row, List<Spot> run) {
        if (!run.isEmpty()) {
            double right = run.get(run.size() - 1).x() + Measures.HEAD_WIDTH + 0.4;
            row.add(
                    Kind.OTTAVA,
                    Optional.of(run.get(0).owner()),
                    shapes(run.get(0).x(), right));
        }
        run.clear();
    }

    private static List<Shape> shapes(double left, double right) {
        var shapes = new ArrayList<Shape>();
        var sign = new Shape.Sign(Glyph.OTTAVA, new Point(left, 0), SCALE);
        shapes.add(sign);
        double y = sign.box().top() + LINE / 2;
        for (double x = sign.box().right() + 0.4; x + DASH < right; x += 2 * DASH) {
            shapes.add(new Stroke(new Point(x, y), new Point(x + DASH, y), LINE));
        }
        shapes.add(new Stroke(new Point(right, y), new Point(right, y + HOOK), LINE));
        return shapes;
    }
}
