package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;

/**
 * Slurs from grace notes to their notes, on both staves, with the letter of what the fretting hand does on the
 * tablature or on a notation staff alone. They lie under the heads, close to them, and may pass a stem (rule:
 * grace-note-technique).
 */
public final class GraceSlurs implements Concern {
    private static final double OFF_GRACE = 0.65;
    private static final double OFF_HEAD = 0.8;
    private static final double OFF_STEM = 0.3;
    private static final double BESIDE = 0.3;
    private static final double OFF_NUMBER = 0.9;

    /** What is less than this between grace note and chord is no curve any more. */
    private static final double SHORTEST = 1;

    @Override
    public void draw(Sketch sketch) {
        Graces.each(sketch, GraceSlurs::draw);
    }

    private static void draw(Sketch sketch, Spot spot, HeadPlace head, Arrival arrival, int nth) {
        double middle = 0;
        if (sketch.options().staves().hasNotation()) {
            var curve = notation(sketch.notation(), spot, head, nth);
            sketch.notation().add(Kind.SLUR, spot.owner(), curve);
            middle = curve.box().middle();
        }
        if (sketch.options().staves().hasTab()) {
            double y = Measures.stringY(head.head().note().string());
            double right = spot.middle();
            double left = right
                    - Labels.width(Labels.text(head.head())) / 2
                    - Labels.graceGap(arrival)
                    - Labels.graceWidth(arrival) / 2;
            var curve = Slurs.overNumbers(sketch.tab(), left, right, y, OFF_NUMBER);
            sketch.tab().add(Kind.SLUR, spot.owner(), curve);
            middle = curve.box().middle();
        }
        SlurLetters.add(
                sketch,
                arrival.kind(),
                spot.owner(),
                middle,
                sketch.options().staves().hasTab());
    }

    private static Shape.Curve notation(Layer layer, Spot spot, HeadPlace head, int nth) {
        double y = Graces.y(spot, head);
        double left = Graces.left(spot, nth);
        var under = new Point(left + Graces.headWidth() / 2, y + OFF_GRACE);
        var cell = spot.cell();
        boolean lowest = spot.column().cells().stream()
                .filter(each -> !each.isRest())
                .allMatch(each -> head.position() <= each.lowest());
        if (lowest) {
            boolean stem = !cell.up() && cell.hasStem();
            double x = spot.x() + (stem ? cell.stemDx() - OFF_STEM : (head.dx() + head.right()) / 2 - OFF_STEM);
            var beside = new Point(x, head.y() + OFF_HEAD);
            var beneath = new Point(spot.x() + (head.dx() + head.right()) / 2, head.y() + OFF_HEAD);
            var curve = Arches.near(layer, under, beside, false).or(() -> Arches.under(layer, under, beneath));
            if (curve.isPresent()) {
                return curve.get();
            }
        }
        var beside = new Point(left + Graces.headWidth() + BESIDE, y + BESIDE);
        double right = Math.max(beside.x() + BESIDE, spot.x() - Columns.leftOfMain(spot.column()) - BESIDE);
        var from = right - beside.x() < SHORTEST ? under : beside;
        return Arches.overHeads(layer, from, new Point(right, head.y() + BESIDE), false);
    }
}
