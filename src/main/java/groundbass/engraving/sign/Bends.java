package groundbass.engraving.sign;

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
import java.util.Comparator;
import java.util.List;

/**
 * Bends as arrows that rise from the note, with their size: on the tablature, else on the notation staff. Arrows of one
 * moment stand side by side, that of the highest string first.
 */
final class Bends implements Concern {
    private static final double SIZE = 1.6;
    private static final double LINE = 0.14;

    @Override
    public void draw(Sketch sketch) {
        sketch.spots().forEach(spot -> bends(sketch, spot));
    }

    private static void bends(Sketch sketch, Spot spot) {
        var bent = spot.cell().heads().stream()
                .filter(head -> Labels.isShown(head.head())
                        && head.head().note().ornaments().bend().isPresent())
                .sorted(Comparator.comparingInt(head -> head.head().note().string()))
                .toList();
        for (int i = 0; i < bent.size(); i++) {
            var bend = bent.get(i).head().note().ornaments().bend().orElseThrow();
            bend(sketch, spot, bent.get(i), bend, i * Labels.BENDS_APART);
        }
    }

    private static void bend(Sketch sketch, Spot spot, HeadPlace head, Bend bend, double shift) {
        sketch.use(Sign.BEND);
        boolean onTab = sketch.options().staves().hasTab();
        var layer = onTab ? sketch.tab() : sketch.notation();
        double startX =
                onTab ? spot.middle() + Labels.reach(spot.column().cells()) + 0.15 : spot.x() + inked(spot) + 0.1;
        double startY = onTab ? Measures.stringY(head.head().note().string()) : head.y();
        double x = startX + 0.8 + shift;
        double top = Math.min(layer.top(x - 0.8, x + 0.8) - 0.5, startY - 1.6);
        layer.add(
                Kind.BEND,
                spot.owner(),
                new Shape.Curve(
                        new Point(startX, startY),
                        new Point(x - 0.2, startY),
                        new Point(x, startY - 0.4),
                        new Point(x, top + 0.5),
                        LINE,
                        LINE));
        layer.add(
                Kind.BEND,
                spot.owner(),
                new Shape.Polygon(
                        List.of(new Point(x, top), new Point(x + 0.35, top + 0.7), new Point(x - 0.35, top + 0.7))));
        var at = new Point(x, top - 0.25);
        layer.add(Kind.BEND, spot.owner(), new Shape.Run(amount(bend), Face.MEDIUM, SIZE, at, Align.MIDDLE));
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
