package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Stroke;
import java.util.ArrayList;
import java.util.List;

/** Words with a dashed line behind them, for what lasts over several notes; a hook shows where it ends, unless it leads on. */
final class Dashes {
    private static final double DASH = 0.7;
    private static final double LINE = 0.14;
    private static final double RAISE = 0.4;
    private static final double HOOK = 0.7;
    private static final double SHORTEST = 1.2;

    private Dashes() {}

    /** On a baseline of height zero; without a line where there is no room for one. */
    static List<Shape> shapes(String words, Face face, double size, double left, double right) {
        var shapes = open(words, face, size, left, right);
        if (shapes.size() > 1) {
            shapes.add(new Stroke(new Point(right, -RAISE), new Point(right, -RAISE + HOOK), LINE));
        }
        return shapes;
    }

    /** Without a hook. */
    static List<Shape> open(String words, Face face, double size, double left, double right) {
        var run = new Shape.Run(words, face, size, new Point(left, 0), Align.START);
        var shapes = new ArrayList<Shape>(List.of(run));
        double x = run.box().right() + 0.4;
        if (right - x < SHORTEST) {
            return shapes;
        }
        for (; x + DASH < right; x += 2 * DASH) {
            shapes.add(new Stroke(new Point(x, -RAISE), new Point(x + DASH, -RAISE), LINE));
        }
        return shapes;
    }
}
