package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Ornaments.Bend;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Bends as arrows that rise from the note, with their size: on the tablature, else on the notation staff, which says with heads what is bent before it is struck. Arrows of one
 * moment stand side by side, that of the highest string first.
 */
public final class Bends implements Concern {
    private static final double SIZE = 1.6;
    private static final double LINE = 0.14;

    /** From the middle of an arrow to where what follows it may begin. */
    private static final double BESIDE_ARROW = 0.55;

    @Override
    public void draw(Sketch sketch) {
        sketch.spots().forEach(spot -> bends(sketch, spot));
    }

    private static void bends(Sketch sketch, Spot spot) {
        boolean onTab = sketch.options().staves().hasTab();
        var bent = spot.cell().heads().stream()
                .filter(head -> Labels.isShown(head.head())
                        && head.head().note().ornaments().bend().isPresent()
                        && (onTab || head.head().bentBefore().isEmpty()))
                .sorted(Comparator.comparingInt(head -> head.head().note().string()))
                .toList();
        double shift = 0;
        for (var head : bent) {
            var bend = head.head().note().ornaments().bend().orElseThrow();
            bend(sketch, spot, head, bend, shift);
            shift += Labels.BENDS_APART + (bend.released() ? Labels.RELEASE : 0);
        }
    }

    private static void bend(Sketch sketch, Spot spot, HeadPlace head, Bend bend, double shift) {
        sketch.use(bend.before() ? Sign.PREBEND : Sign.BEND);
        boolean onTab = sketch.options().staves().hasTab();
        var layer = onTab ? sketch.tab() : sketch.notation();
        double startX =
                onTab ? spot.middle() + Labels.reach(spot.column().cells()) + 0.15 : spot.x() + inked(spot) + 0.1;
        double startY = onTab ? Measures.stringY(head.head().note().string()) : head.y();
        double x = startX + 0.8 + shift;
        double right = bend.released() ? x + Labels.RELEASE : x + 0.8;
        double top = Math.min(layer.top(x - 0.8, right) - 0.5, startY - 1.6);
        var shapes = new ArrayList<>(up(bend, new Point(startX, startY), new Point(x, top)));
        if (bend.released()) {
            sketch.use(Sign.RELEASE);
            shapes.addAll(down(new Point(x, top), new Point(x + Labels.RELEASE, startY - 0.3)));
        }
        shapes.add(new Shape.Run(amount(bend), Face.MEDIUM, SIZE, new Point(x, top - 0.25), Align.MIDDLE));
        shapes.forEach(shape -> layer.add(Kind.BEND, spot.owner(), shape));
        layer.end(head, new Point((bend.released() ? x + Labels.RELEASE : x) + BESIDE_ARROW, startY));
    }

    /** A curve from the note, or straight up where it is bent before it is struck. */
    private static List<Shape> up(Bend bend, Point start, Point tip) {
        double x = tip.x();
        double y = tip.y();
        var line = bend.before()
                ? new Shape.Stroke(new Point(x, start.y()), new Point(x, y + 0.5), LINE)
                : new Shape.Curve(
                        start,
                        new Point(x - 0.2, start.y()),
                        new Point(x, start.y() - 0.4),
                        new Point(x, y + 0.5),
                        LINE,
                        LINE);
        return List.of(line, arrow(tip, 1));
    }

    /** From the top of the bend down to where the string comes to rest. */
    private static List<Shape> down(Point top, Point tip) {
        var line = new Shape.Curve(
                new Point(top.x() + 0.3, top.y() + 0.6),
                new Point(top.x() + 0.8, top.y() + 0.5),
                new Point(tip.x(), top.y() + 0.7),
                new Point(tip.x(), tip.y() - 0.5),
                LINE,
                LINE);
        return List.of(line, arrow(tip, -1));
    }

    /** @param way 1 upward, -1 downward */
    private static Shape arrow(Point tip, int way) {
        double base = tip.y() + way * 0.7;
        return new Shape.Polygon(List.of(tip, new Point(tip.x() + 0.35, base), new Point(tip.x() - 0.35, base)));
    }

    /** For a legend: straight up, or back down. */
    public static List<Shape> sample(boolean before) {
        return before
                ? List.of(
                        new Shape.Stroke(new Point(0.35, 0), new Point(0.35, -1.1), LINE),
                        arrow(new Point(0.35, -1.6), 1))
                : List.of(
                        new Shape.Stroke(new Point(0.35, -1.6), new Point(0.35, -0.5), LINE),
                        arrow(new Point(0.35, 0), -1));
    }

    /** How far a column's heads and dots reach to the right. */
    static double inked(Spot spot) {
        double right = 0;
        for (var cell : spot.column().cells()) {
            right = Math.max(right, cell.headsRight());
            for (var dot : cell.dots()) {
                right = Math.max(right, dot.dx() + MusicFont.bravura().width(Glyph.DOT));
            }
        }
        return right;
    }

    /** In whole tones, as players write it. */
    static String amount(Bend bend) {
        String whole = bend.quarters() / 4 == 0 ? "" : Integer.toString(bend.quarters() / 4);
        return whole
                + switch (bend.quarters() % 4) {
                    case 1 -> "¼";
                    case 2 -> "½";
                    case 3 -> "¾";
                    default -> "";
                };
    }
}
