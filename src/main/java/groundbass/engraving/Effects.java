package groundbass.engraving;

import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What lasts over a note: vibrato as a wave, ringing on as words with dashes; and bends as arrows with their size. */
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
        for (var spot : sketch.spots()) {
            bends(sketch, spot);
        }
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

    private static void bends(Sketch sketch, Spot spot) {
        for (var head : spot.cell().heads()) {
            if (Labels.isShown(head.head())) {
                head.head().note().ornaments().bend().ifPresent(bend -> bend(sketch, spot, head, bend));
            }
        }
    }

    private static void bend(Sketch sketch, Spot spot, HeadPlace head, Bend bend) {
        sketch.use(Sign.BEND);
        boolean onTab = sketch.options().staves().hasTab();
        var layer = onTab ? sketch.tab() : sketch.notation();
        double startX = onTab
                ? spot.middle() + Labels.width(Labels.text(head.head())) / 2 + 0.1
                : spot.x() + head.right() + 0.1;
        double startY = onTab ? Measures.stringY(head.head().note().string()) : head.y();
        double x = startX + 0.8;
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
