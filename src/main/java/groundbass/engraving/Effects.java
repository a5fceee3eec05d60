package groundbass.engraving;

import groundbass.score.Ornaments.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What lasts over a note: vibrato as a wave, and ringing on as words with dashes. */
final class Effects implements Concern {
    private static final double GAP = 0.4;
    private static final double SIZE = 1.6;
    private static final double LINE = 0.14;
    private static final double DASH = 0.7;

    @Override
    public void draw(Sketch sketch) {
        var layer = sketch.upper();
        var waves = new Row(0.2);
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            if (begins(spot, Mark.VIBRATO)) {
                sketch.use(Sign.VIBRATO);
                waves.add(Kind.VIBRATO, Optional.of(spot.owner()), wave(spot.x(), end(sketch, i) - 0.6));
            }
        }
        waves.placeAbove(layer, GAP);
        var rings = new Row(0.2);
        int i = 0;
        while (i < sketch.spots().size()) {
            int last = lastRinging(sketch, i);
            if (last >= i) {
                ring(sketch, rings, i, last);
            }
            i = Math.max(i, last) + 1;
        }
        rings.placeAbove(layer, GAP);
    }

    private static boolean begins(Spot spot, Mark mark) {
        return spot.cell().heads().stream()
                .anyMatch(head -> !head.head().tiedFrom() && head.head().note().has(mark));
    }

    private static boolean rings(Spot spot) {
        return spot.cell().heads().stream().anyMatch(head -> head.head().note().has(Mark.RING));
    }

    /** The last of the ringing spots that follow one another from {@code first}; less than {@code first} for none. */
    private static int lastRinging(Sketch sketch, int first) {
        int last = first;
        while (last < sketch.spots().size() && rings(sketch.spots().get(last))) {
            last++;
        }
        return last - 1;
    }

    private static void ring(Sketch sketch, Row row, int first, int last) {
        sketch.use(Sign.RING);
        var spot = sketch.spots().get(first);
        String words = sketch.options().words().ring();
        var shapes = new ArrayList<Shape>();
        var run = new Shape.Run(words, Face.ITALIC, SIZE, new Point(spot.x(), 0), Align.START);
        shapes.add(run);
        double end = sketch.spots().get(last).x() + Measures.HEAD_WIDTH;
        for (double x = run.box().right() + 0.4; x + DASH < end; x += 2 * DASH) {
            shapes.add(new Shape.Stroke(new Point(x, -0.4), new Point(x + DASH, -0.4), LINE));
        }
        double over = Math.max(0, run.box().right() - sketch.plan().width());
        row.add(
                Kind.RING,
                Optional.of(spot.owner()),
                shapes.stream().map(shape -> shape.moved(-over, 0)).toList());
    }

    /** Where the next thing in this voice begins. */
    private static double end(Sketch sketch, int index) {
        var spot = sketch.spots().get(index);
        return sketch.spots().stream()
                .skip(index + 1L)
                .filter(next -> next.x() > spot.x())
                .mapToDouble(Spot::x)
                .findFirst()
                .orElse(spot.span().end());
    }

    private static List<Shape> wave(double left, double right) {
        double step = MusicFont.bravura().width(Glyph.VIBRATO);
        int count = Math.max(2, (int) ((right - left) / step));
        var shapes = new ArrayList<Shape>();
        for (int i = 0; i < count; i++) {
            shapes.add(new Shape.Sign(Glyph.VIBRATO, new Point(left + i * step, 0), 1));
        }
        return shapes;
    }
}
