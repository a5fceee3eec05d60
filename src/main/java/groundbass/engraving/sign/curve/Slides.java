package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.curve.Reached.End;
import groundbass.engraving.sign.staff.TabNumbers;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;

/**
 * Slides as straight lines that lean the way the pitch goes, on both staves (rule: slide-lines), from note to note or from
 * a grace note (rule: grace-note-technique); over a system's end, half on each side (rule: curve-over-break).
 */
public final class Slides implements Concern {
    private static final double LINE = 0.16;
    private static final double LEAST = 0.5;

    /** From the middle of a bend's small head to where a line may begin. */
    private static final double BESIDE_SMALL = 0.9;

    /** How far a line leans that begins or ends on another system. */
    private static final double LEAN = 1;

    @Override
    public void draw(Sketch sketch) {
        for (var each : Reached.of(sketch)) {
            if (each.kind() == Arrival.Kind.SLIDE) {
                if (sketch.options().staves().hasNotation()) {
                    notation(sketch, each);
                }
                if (sketch.options().staves().hasTab()) {
                    tab(sketch, each);
                }
            }
        }
        Graces.each(sketch, Slides::grace);
    }

    private static void notation(Sketch sketch, Reached each) {
        double lean = each.direction() * LEAN;
        var bent = each.source().flatMap(end -> sketch.notation().end(end.head()));
        double fromY = bent.map(Point::y)
                .or(() -> each.source().map(end -> end.head().y()))
                .orElse(each.head().y() + lean);
        double toY = each.target().map(end -> end.head().y()).orElse(each.head().y() - lean);
        double left = bent.map(at -> at.x() + BESIDE_SMALL)
                .or(() -> each.source()
                        .map(end -> end.spot().x() + end.spot().cell().headsRight() + Measures.SLIDE_GAP))
                .orElse(each.start());
        double right = each.target()
                .map(end -> end.spot().x() - Slurs.columnLeft(end.spot()) - Measures.SLIDE_GAP)
                .orElse(each.end());
        sketch.notation().add(Kind.SLIDE, each.owner(), line(left, fromY, right, toY, each.direction()));
    }

    private static void tab(Sketch sketch, Reached each) {
        double y = Measures.stringY(each.string());
        double left = each.source()
                .map(end -> sketch.tab()
                        .end(end.head())
                        .map(Point::x)
                        .orElseGet(() -> each.start() + reach(end) + Measures.SLIDE_GAP))
                .orElse(each.start());
        double right = each.target()
                .map(end -> each.end() - reach(end) - Measures.SLIDE_GAP)
                .orElse(each.end());
        sketch.tab().add(Kind.SLIDE, each.owner(), line(left, y, right, y, each.direction()));
    }

    private static void grace(Sketch sketch, Spot spot, HeadPlace head, Arrival arrival, int nth) {
        if (arrival.kind() != Arrival.Kind.SLIDE) {
            return;
        }
        int direction = arrival.graceFret().orElse(0) <= Labels.fret(head.head()) ? 1 : -1;
        if (sketch.options().staves().hasNotation()) {
            double left = Graces.left(spot, nth) + Graces.headWidth() + Measures.SLIDE_GAP;
            double right = Math.max(left + LEAST, spot.x() - Columns.leftOfMain(spot.column()) - Measures.SLIDE_GAP);
            var line = line(left, Graces.y(spot, head), right, head.y(), direction);
            sketch.notation().add(Kind.SLIDE, spot.owner(), line);
        }
        if (sketch.options().staves().hasTab()) {
            double y = Measures.stringY(head.head().note().string());
            double right = spot.middle() - Labels.width(Labels.text(head.head())) / 2;
            double left = right - Labels.graceGap(arrival);
            sketch.tab()
                    .add(
                            Kind.SLIDE,
                            spot.owner(),
                            line(left + Measures.SLIDE_GAP / 2, y, right - Measures.SLIDE_GAP / 2, y, direction));
        }
    }

    private static double reach(End end) {
        String text = TabNumbers.printed(end.spot(), end.head().head());
        return text.isEmpty() ? 0 : Labels.width(text) / 2;
    }

    /** A line that visibly rises or falls, even where both ends are on one height. */
    private static Shape line(double left, double fromY, double right, double toY, int direction) {
        double tilt = Math.abs(fromY - toY) < 0.6 ? direction * 0.35 : direction * 0.1;
        double start = Math.min(left, right - LEAST);
        return new Shape.Stroke(new Point(start, fromY + tilt), new Point(right, toY - tilt), LINE);
    }
}
