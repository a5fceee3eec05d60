package groundbass.engraving.svg;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Decimals;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Shapes as SVG path data. All outlines turn the same way, so that overlapping ones never cut holes. */
final class SvgPaths {
    private static final Map<Glyph, String> GLYPHS = new ConcurrentHashMap<>(new EnumMap<>(Glyph.class));

    private SvgPaths() {}

    static void rect(StringBuilder out, Box box) {
        move(out, 'M', new Point(box.left(), box.top()));
        out.append('h');
        Decimals.append(out, box.width(), 2);
        out.append('v');
        Decimals.append(out, box.height(), 2);
        out.append('h');
        Decimals.append(out, -box.width(), 2);
        out.append('z');
    }

    static void polygon(StringBuilder out, List<Point> corners) {
        var turned = clockwise(corners);
        move(out, 'M', turned.get(0));
        turned.stream().skip(1).forEach(corner -> move(out, 'L', corner));
        out.append('z');
    }

    /** @param lens eight points, as {@link Shape.Curve#lens} gives them */
    static void lens(StringBuilder out, List<Point> lens) {
        var turned = clockwise(lens);
        move(out, 'M', turned.get(0));
        cubic(out, turned.subList(1, 4));
        move(out, 'L', turned.get(4));
        cubic(out, turned.subList(5, 8));
        out.append('z');
    }

    static String glyph(Glyph glyph) {
        return GLYPHS.computeIfAbsent(
                glyph, each -> outline(MusicFont.bravura().outline(each).path()));
    }

    private static String outline(Path2D path) {
        var out = new StringBuilder();
        double[] c = new double[6];
        for (var each = path.getPathIterator(null); !each.isDone(); each.next()) {
            switch (each.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> numbers(out.append('M'), c, 2);
                case PathIterator.SEG_LINETO -> numbers(out.append('L'), c, 2);
                case PathIterator.SEG_QUADTO -> numbers(out.append('Q'), c, 4);
                case PathIterator.SEG_CUBICTO -> numbers(out.append('C'), c, 6);
                default -> out.append('z');
            }
        }
        return out.toString();
    }

    private static void numbers(StringBuilder out, double[] values, int count) {
        for (int i = 0; i < count; i++) {
            separate(out, values[i]);
            Decimals.append(out, values[i], 3);
        }
    }

    private static void cubic(StringBuilder out, List<Point> points) {
        out.append('C');
        points.forEach(point -> pair(out, point));
    }

    private static void move(StringBuilder out, char command, Point to) {
        pair(out.append(command), to);
    }

    private static void pair(StringBuilder out, Point point) {
        separate(out, point.x());
        Decimals.append(out, point.x(), 2);
        separate(out, point.y());
        Decimals.append(out, point.y(), 2);
    }

    /** A blank between two numbers, which a command letter or a minus sign makes needless. */
    private static void separate(StringBuilder out, double next) {
        char last = out.charAt(out.length() - 1);
        if (next >= -0.0004 && !Character.isLetter(last)) {
            out.append(' ');
        } else if (next > -0.005 && Character.isDigit(last)) {
            out.append(' ');
        }
    }

    private static List<Point> clockwise(List<Point> corners) {
        double area = 0;
        for (int i = 0; i < corners.size(); i++) {
            var a = corners.get(i);
            var b = corners.get((i + 1) % corners.size());
            area += a.x() * b.y() - b.x() * a.y();
        }
        if (area >= 0) {
            return corners;
        }
        var turned = new java.util.ArrayList<>(corners);
        Collections.reverse(turned);
        return turned;
    }
}
