package groundbass.engraving.sign;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;

/** Slurs from grace notes to their notes, on both staves, clear of what stands between and beside them. */
final class GraceSlurs implements Concern {
    private static final double OFF_GRACE = 0.55;
    private static final double OFF_HEAD = 0.75;
    private static final double OFF_NUMBER = 0.9;

    @Override
    public void draw(Sketch sketch) {
        Graces.each(sketch, GraceSlurs::draw);
    }

    private static void draw(Sketch sketch, Spot spot, HeadPlace head, Arrival arrival, int nth) {
        if (sketch.options().staves().hasNotation()) {
            double width = MusicFont.bravura().width(Glyph.HEAD_BLACK) * Measures.GRACE_SCALE;
            double y = Graces.y(sketch, spot, head, arrival);
            var from = new Point(Graces.left(spot, nth) + width / 2, y + OFF_GRACE);
            double lowest = Measures.y(spot.column().cells().stream()
                    .filter(cell -> !cell.isRest())
                    .mapToInt(Cell::lowest)
                    .min()
                    .orElseThrow());
            var to = new Point(spot.middle() - 0.2, Math.max(y, lowest) + OFF_HEAD);
            var curve = Arches.clear(sketch.notation(), from, to, false)
                    .orElseGet(() -> beside(sketch, spot, head, new Point(from.x() + width / 2 + 0.25, y + 0.3)));
            add(sketch.notation(), spot, curve);
        }
        if (sketch.options().staves().hasTab()) {
            double y = Measures.stringY(head.head().note().string());
            double right = spot.middle();
            double left = right
                    - Labels.width(Labels.text(head.head())) / 2
                    - Labels.GRACE_GAP
                    - Labels.graceWidth(arrival) / 2;
            add(sketch.tab(), spot, Slurs.overNumbers(sketch.tab(), left, right, y, OFF_NUMBER));
        }
    }

    /** Beside the head, where chord notes under it leave no way to its other side. */
    private static Shape.Curve beside(Sketch sketch, Spot spot, HeadPlace head, Point from) {
        double left = spot.column().accidentals().stream()
                .mapToDouble(sign -> sign.box().left())
                .min()
                .orElse(0);
        double right = Math.max(from.x() + 0.5, spot.x() + Math.min(left, head.dx()) - 0.25);
        return Arches.over(sketch.notation(), from, new Point(right, head.y() + 0.3), false);
    }

    private static void add(Layer layer, Spot spot, Shape.Curve curve) {
        layer.add(Kind.SLUR, spot.owner(), curve);
    }
}
