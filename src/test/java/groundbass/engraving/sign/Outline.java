package groundbass.engraving.sign;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** What a mark really covers, as small boxes: a curve is no rectangle, nor is a sloping beam or a flag. */
record Outline(Mark mark, Box box, List<Box> pieces) {
    private static final int CURVE_PIECES = 200;
    private static final double GLYPH_STEP = 0.25;
    private static final Map<Glyph, List<Box>> GLYPHS = new ConcurrentHashMap<>();

    static Outline of(Mark mark) {
        var pieces = pieces(mark.shape());
        return new Outline(mark, pieces.stream().reduce(Box::union).orElseGet(mark::box), pieces);
    }

    boolean touches(Outline that, double slack) {
        if (!box.grown(-slack).overlaps(that.box)) {
            return false;
        }
        for (var piece : pieces) {
            var inner = piece.grown(-slack);
            for (var other : that.pieces) {
                if (inner.overlaps(other)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static List<Box> pieces(Shape shape) {
        if (shape instanceof Shape.Curve curve) {
            return along(CURVE_PIECES, curve::at, curve.middle() / 2);
        }
        if (shape instanceof Shape.Stroke stroke) {
            double length = Math.hypot(
                    stroke.to().x() - stroke.from().x(),
                    stroke.to().y() - stroke.from().y());
            int count = Math.max(1, (int) (length / 0.5));
            return along(count, t -> between(stroke.from(), stroke.to(), t), stroke.thickness() / 2);
        }
        if (shape instanceof Shape.Polygon polygon) {
            return slices(polygon);
        }
        if (shape instanceof Shape.Sign sign) {
            return GLYPHS.computeIfAbsent(sign.glyph(), Outline::slices).stream()
                    .map(box -> box.scaled(sign.scale())
                            .moved(sign.at().x(), sign.at().y()))
                    .toList();
        }
        return List.of(shape.box());
    }

    private interface Way {
        Point at(double t);
    }

    private static List<Box> along(int count, Way way, double reach) {
        var pieces = new ArrayList<Box>();
        for (int i = 0; i < count; i++) {
            var from = way.at((double) i / count);
            var to = way.at((i + 1.0) / count);
            pieces.add(Box.around(from, 0).union(Box.around(to, 0)).grown(reach));
        }
        return pieces;
    }

    private static Point between(Point from, Point to, double t) {
        return new Point(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()));
    }

    private static List<Box> slices(Shape.Polygon polygon) {
        var path = new Path2D.Double();
        path.moveTo(polygon.corners().get(0).x(), polygon.corners().get(0).y());
        polygon.corners().forEach(corner -> path.lineTo(corner.x(), corner.y()));
        path.closePath();
        return slices(path, 0.5);
    }

    private static List<Box> slices(Glyph glyph) {
        return slices(MusicFont.bravura().outline(glyph).path(), GLYPH_STEP);
    }

    /** Upright slices, each as high as what the path covers in it, in its separate runs. */
    private static List<Box> slices(Path2D path, double step) {
        var bounds = path.getBounds2D();
        var whole = new Area(path.createTransformedShape(new AffineTransform()));
        var boxes = new ArrayList<Box>();
        for (double x = bounds.getMinX(); x < bounds.getMaxX(); x += step) {
            var part = new Area(new Rectangle2D.Double(x, bounds.getMinY(), step, bounds.getHeight()));
            part.intersect(whole);
            if (!part.isEmpty()) {
                var covered = part.getBounds2D();
                boxes.add(new Box(covered.getMinX(), covered.getMinY(), covered.getMaxX(), covered.getMaxY()));
            }
        }
        return boxes;
    }
}
