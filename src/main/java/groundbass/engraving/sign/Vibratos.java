package groundbass.engraving.sign;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.score.Ornaments.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Vibrato as a wave as long as its note, over both staves (rule: vibrato-wave). */
final class Vibratos implements Concern {
    private static final double GAP = 0.4;
    private static final double BEFORE_NEXT = 0.6;
    private static final double BEFORE_BARLINE = 0.3;

    @Override
    public void draw(Sketch sketch) {
        var upper = new Row(0.2);
        var tab = new Row(0.2);
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            if (begins(spot)) {
                sketch.use(Sign.VIBRATO);
                var wave = wave(spot, end(sketch, i) - BEFORE_NEXT);
                upper.add(Kind.VIBRATO, Optional.of(spot.owner()), wave);
                tab.add(Kind.VIBRATO, Optional.of(spot.owner()), wave);
            }
        }
        upper.placeAbove(sketch.upper(), GAP);
        if (sketch.options().staves() == Staves.BOTH) {
            tab.placeAbove(sketch.tab(), GAP);
        }
    }

    private static boolean begins(Spot spot) {
        return spot.cell().heads().stream()
                .anyMatch(head -> !head.head().tiedFrom() && head.head().note().has(Mark.VIBRATO));
    }

    /** Where the next thing begins. */
    private static double end(Sketch sketch, int index) {
        var spot = sketch.spots().get(index);
        return sketch.spots().stream()
                .skip(index + 1L)
                .filter(next -> next.x() > spot.x())
                .mapToDouble(Spot::x)
                .findFirst()
                .orElse(spot.span().end());
    }

    /** At least two strokes, before the barline. */
    private static List<Shape> wave(Spot spot, double right) {
        double step = MusicFont.bravura().width(Glyph.VIBRATO);
        double limit = spot.span().end() - BEFORE_BARLINE;
        int count = Math.max(2, (int) ((Math.min(right, limit) - spot.x()) / step));
        double left = Math.min(spot.x(), limit - count * step);
        var shapes = new ArrayList<Shape>();
        for (int i = 0; i < count; i++) {
            shapes.add(new Shape.Sign(Glyph.VIBRATO, new Point(left + i * step, 0), 1));
        }
        return shapes;
    }
}
