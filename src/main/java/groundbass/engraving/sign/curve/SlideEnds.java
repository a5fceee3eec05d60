package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import java.util.List;

/** Slides from and to nowhere in particular: a short line before or behind the note, on both staves. */
public final class SlideEnds implements Concern {
    private static final double LENGTH = 1.0;
    private static final double RISE = 0.45;
    private static final double GAP = 0.2;

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            for (var head : spot.cell().heads()) {
                var ornaments = head.head().note().ornaments();
                if (!head.head().tiedFrom()) {
                    ornaments.slideIn().ifPresent(in -> in(sketch, spot, head, in));
                }
                if (!head.head().tiedTo()) {
                    ornaments.slideOff().ifPresent(off -> off(sketch, spot, head, off));
                }
            }
        }
    }

    private static void in(Sketch sketch, Spot spot, HeadPlace head, SlideIn in) {
        sketch.use(Sign.SLIDE_IN);
        double fall =
                switch (in) {
                    case BELOW -> RISE;
                    case ABOVE -> -RISE;
                };
        if (sketch.options().staves().hasNotation()) {
            double right = spot.x() - Math.max(0, accidentalLeft(spot)) - GAP;
            stroke(sketch.notation(), spot, right - LENGTH, head.y() + fall * 1.4, right, head.y());
        }
        if (sketch.options().staves().hasTab()) {
            double y = Measures.stringY(head.head().note().string());
            double grace = head.head().note().arrival().filter(Arrival::isGrace).isPresent()
                    ? Labels.graceReach(List.of(spot.cell()))
                    : 0;
            double right = spot.middle() - Labels.width(Labels.text(head.head())) / 2 - grace - GAP;
            stroke(sketch.tab(), spot, right - LENGTH, y + fall, right, y - fall);
        }
    }

    private static void off(Sketch sketch, Spot spot, HeadPlace head, SlideOff off) {
        sketch.use(Sign.SLIDE_OFF);
        double fall =
                switch (off) {
                    case DOWN -> RISE;
                    case UP -> -RISE;
                };
        if (sketch.options().staves().hasNotation()) {
            double left = spot.x() + head.right() + GAP;
            stroke(sketch.notation(), spot, left, head.y(), left + LENGTH, head.y() + fall * 1.4);
        }
        if (sketch.options().staves().hasTab() && Labels.isShown(head.head())) {
            double y = Measures.stringY(head.head().note().string());
            double left = spot.middle() + Labels.width(Labels.text(head.head())) / 2 + GAP;
            stroke(sketch.tab(), spot, left, y - fall, left + LENGTH, y + fall);
        }
    }

    private static double accidentalLeft(Spot spot) {
        return spot.column().accidentals().stream()
                .mapToDouble(each -> -each.box().left())
                .max()
                .orElse(0);
    }

    private static void stroke(Layer layer, Spot spot, double x1, double y1, double x2, double y2) {
        layer.add(Kind.SLIDE, spot.owner(), new Shape.Stroke(new Point(x1, y1), new Point(x2, y2), 0.16));
    }
}
