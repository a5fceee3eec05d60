package groundbass.engraving.mark;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/** Long shapes cut into pieces whose boxes leave less out than one box around it all takes in. */
final class Pieces {
    private static final double LONGEST = 0.5;
    private static final int FEWEST = 8;
    private static final int MOST = 80;

    private Pieces() {}

    /** Into how many pieces a curve is cut. */
    static int ofCurve(Shape.Curve curve) {
        return count(2 * (curve.to().x() - curve.from().x()));
    }

    /** @param way the point at each share of it, from 0 to 1 */
    static List<Box> along(int count, DoubleFunction<Point> way, double reach) {
        var pieces = new ArrayList<Box>(count);
        var before = way.apply(0);
        for (int i = 1; i <= count; i++) {
            var next = way.apply((double) i / count);
            pieces.add(around(before, next).grown(reach));
            before = next;
        }
        return pieces;
    }

    static List<Box> between(Point from, Point to, double reach) {
        return along(count(to.x() - from.x()), share -> point(from, to, share), reach);
    }

    /** @param corners one after the other, the first and the last at the same end */
    static List<Box> between(List<Point> corners) {
        int count = count(corners.get(1).x() - corners.get(0).x());
        var pieces = new ArrayList<Box>(count);
        for (int i = 0; i < count; i++) {
            double from = (double) i / count;
            double to = (i + 1.0) / count;
            pieces.add(around(point(corners.get(0), corners.get(1), from), point(corners.get(0), corners.get(1), to))
                    .union(around(
                            point(corners.get(3), corners.get(2), from), point(corners.get(3), corners.get(2), to))));
        }
        return pieces;
    }

    private static int count(double length) {
        return Math.max(FEWEST, Math.min(MOST, (int) (Math.abs(length) / LONGEST)));
    }

    private static Point point(Point from, Point to, double share) {
        return new Point(from.x() + share * (to.x() - from.x()), from.y() + share * (to.y() - from.y()));
    }

    private static Box around(Point a, Point b) {
        return new Box(Math.min(a.x(), b.x()), Math.min(a.y(), b.y()), Math.max(a.x(), b.x()), Math.max(a.y(), b.y()));
    }
}
