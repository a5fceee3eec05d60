package groundbass.engraving.sign;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;
import groundbass.score.Place;

/** Slides from note to note as straight lines that lean the way the pitch goes, on both staves (rule: slide-lines). */
final class Slides implements Concern {
    private static final double LINE = 0.16;
    private static final double LEAST = 0.5;

    @Override
    public void draw(Sketch sketch) {
        for (var each : Reached.of(sketch)) {
            if (each.arrival().kind() == Arrival.Kind.SLIDE) {
                if (sketch.options().staves().hasNotation()) {
                    notation(sketch, each);
                }
                if (sketch.options().staves().hasTab()) {
                    tab(sketch, each);
                }
            }
        }
    }

    private static void notation(Sketch sketch, Reached each) {
        double fromY = each.from().map(HeadPlace::y).orElse(each.head().y());
        double left = each.source()
                .map(spot -> spot.x() + spot.cell().headsRight())
                .orElse(each.target().span().start() - 0.8);
        double right = each.target().x() - Slurs.columnLeft(each.target());
        var line = line(
                left + Measures.SLIDE_GAP,
                fromY,
                right - Measures.SLIDE_GAP,
                each.head().y(),
                direction(each));
        sketch.notation().add(Kind.SLIDE, each.target().owner(), line);
    }

    private static void tab(Sketch sketch, Reached each) {
        double y = Measures.stringY(each.string());
        double left = each.sourceMiddle() + each.from().map(Slides::reach).orElse(0.0) + Measures.SLIDE_GAP;
        double right = each.target().middle() - reach(each.head()) - Measures.SLIDE_GAP;
        sketch.tab().add(Kind.SLIDE, each.target().owner(), line(left, y, right, y, direction(each)));
    }

    private static double reach(HeadPlace head) {
        return Labels.isShown(head.head()) ? Labels.width(Labels.text(head.head())) / 2 : 0;
    }

    /** Up the neck 1, down it -1. */
    private static int direction(Reached each) {
        int to = fret(each.head());
        return each.from().map(Slides::fret).orElse(to - 1) <= to ? 1 : -1;
    }

    private static int fret(HeadPlace head) {
        return head.head().note().place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
    }

    /** A line that visibly rises or falls, even where both ends are on one height. */
    private static Shape line(double left, double fromY, double right, double toY, int direction) {
        double tilt = Math.abs(fromY - toY) < 0.6 ? direction * 0.35 : direction * 0.1;
        double start = Math.min(left, right - LEAST);
        return new Shape.Stroke(new Point(start, fromY + tilt), new Point(right, toY - tilt), LINE);
    }
}
