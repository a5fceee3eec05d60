package groundbass.engraving.mark;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;

/** Glyphs turned by a quarter to the left: the font has the wave of a rolled chord lying, and music has it standing. */
public final class Upright {
    /** How far straight pieces may lie beside a curve, in staff spaces. */
    private static final double FLATNESS = 0.005;

    private Upright() {}

    /** Of the music font, its origin at a point: what it had to its right stands above that, and what it had below, right of it. */
    public static List<Shape> of(Glyph glyph, Point at) {
        var turned = AffineTransform.getTranslateInstance(at.x(), at.y());
        turned.rotate(-Math.PI / 2);
        return polygons(MusicFont.bravura().outline(glyph).path(), turned);
    }

    private static List<Shape> polygons(Path2D path, AffineTransform turned) {
        var polygons = new ArrayList<Shape>();
        var corners = new ArrayList<Point>();
        var point = new double[6];
        for (var along = path.getPathIterator(turned, FLATNESS); !along.isDone(); along.next()) {
            if (along.currentSegment(point) == PathIterator.SEG_CLOSE) {
                polygons.add(new Shape.Polygon(corners));
                corners.clear();
            } else {
                corners.add(new Point(point[0], point[1]));
            }
        }
        return polygons;
    }
}
