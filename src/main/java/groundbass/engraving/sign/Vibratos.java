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

/**
 * Vibrato as a wave as long as its note, ties and all, over both staves (rule: vibrato-wave); the lower of two voices has its
 * wave over the tablature only, or under a staff alone.
 */
final class Vibratos implements Concern {
    private static final double GAP = 0.4;
    private static final double BEFORE_NEXT = 0.6;
    private static final double BEFORE_BARLINE = 0.3;

    @Override
    public void draw(Sketch sketch) {
        var over = new Row(0.2);
        var under = new Row(0.2);
        var between = new Row(0.2);
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            if (begins(spot)) {
                sketch.use(Sign.VIBRATO);
                var wave = wave(sketch, i);
                (isLower(spot) ? under : over).add(Kind.VIBRATO, Optional.of(spot.owner()), wave);
                between.add(Kind.VIBRATO, Optional.of(spot.owner()), withoutBarlines(sketch, wave));
            }
        }
        over.placeAbove(sketch.upper(), GAP);
        if (sketch.options().staves() == Staves.BOTH) {
            between.placeAbove(sketch.tab(), GAP);
        } else {
            under.placeBelow(sketch.upper(), GAP);
        }
    }

    private static List<Shape> withoutBarlines(Sketch sketch, List<Shape> wave) {
        return wave.stream()
                .filter(shape -> !TechniqueSpans.onBarline(sketch, shape.box()))
                .toList();
    }

    /** On its first head, or where it enters a system. */
    private static boolean begins(Spot spot) {
        return spot.cell().heads().stream()
                .anyMatch(head -> head.head().note().has(Mark.VIBRATO)
                        && (!head.head().tiedFrom() || TabNumbers.isEntering(spot, head.head())));
    }

    private static boolean isLower(Spot spot) {
        return spot.cell().voices() > 1 && spot.cell().voice() == 1;
    }

    /** The last head of the note on this system. */
    private static int last(Sketch sketch, int index) {
        var spots = sketch.spots();
        int last = index;
        for (int i = index + 1; i < spots.size(); i++) {
            boolean goesOn = spots.get(i).cell().heads().stream()
                    .anyMatch(
                            head -> head.head().tiedFrom() && head.head().note().has(Mark.VIBRATO));
            boolean sameVoice =
                    spots.get(i).cell().voice() == spots.get(index).cell().voice();
            last = goesOn && sameVoice ? i : last;
            if (sameVoice && !goesOn) {
                return last;
            }
        }
        return last;
    }

    /** Where the next thing of its voice begins. */
    private static double end(Sketch sketch, int last) {
        var spot = sketch.spots().get(last);
        return sketch.spots().stream()
                .skip(last + 1L)
                .filter(next -> next.x() > spot.x()
                        && next.cell().voice() == spot.cell().voice())
                .mapToDouble(Spot::x)
                .findFirst()
                .orElse(spot.span().end());
    }

    /** At least two strokes, before the barline behind its last head. */
    private static List<Shape> wave(Sketch sketch, int index) {
        var spot = sketch.spots().get(index);
        int last = last(sketch, index);
        double step = MusicFont.bravura().width(Glyph.VIBRATO);
        double limit = sketch.spots().get(last).span().end() - BEFORE_BARLINE;
        double right = Math.min(end(sketch, last) - BEFORE_NEXT, limit);
        int count = Math.max(2, (int) ((right - spot.x()) / step));
        double left = Math.min(spot.x(), limit - count * step);
        var shapes = new ArrayList<Shape>();
        for (int i = 0; i < count; i++) {
            shapes.add(new Shape.Sign(Glyph.VIBRATO, new Point(left + i * step, 0), 1));
        }
        return shapes;
    }
}
