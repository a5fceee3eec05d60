package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Upright;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.Column;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Heads;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Passage;
import java.util.ArrayList;
import java.util.List;

/**
 * Before a chord on each staff: an upright wave where it is rolled (rule: rolled-chord-sign), a bracket where its notes
 * are struck strictly at once (rule: chord-bracket). One sign for both voices.
 */
public final class Spreads implements Concern {
    private static final double BEYOND = 0.5;
    /** A quarter of a space off the nearest line of the staff, whether the head is on a line or between two. */
    private static final double BEYOND_BRACKET = 0.75;

    private static final double BEYOND_NUMBER = 0.75;
    private static final double FROM_NUMBER = 0.35;
    private static final double HOOK = 0.5;
    private static final double LINE = 0.16;
    private static final double ARROW = 0.7;
    private static final double SAMPLE_TOP = -1.65;
    private static final double SAMPLE_BOTTOM = 0.5;
    private static final int FEWEST = 2;

    @Override
    public void draw(Sketch sketch) {
        for (var span : sketch.plan().bars()) {
            for (int i = 0; i < span.columns().length; i++) {
                var column = span.bar().columns().get(i);
                double x = span.columns()[i];
                Heads.spread(column.cells()).ifPresent(spread -> draw(sketch, column, x, spread));
            }
        }
    }

    private static void draw(Sketch sketch, Column column, double x, Spread spread) {
        sketch.use(Sign.of(spread));
        var begun =
                column.cells().stream().flatMap(cell -> begun(cell).stream()).toList();
        var owner = column.cells().stream()
                .filter(cell -> !begun(cell).isEmpty())
                .map(Cell::owner)
                .findFirst()
                .orElseThrow();
        if (sketch.options().staves().hasNotation()) {
            double beyond = spread.isRolled() ? BEYOND : BEYOND_BRACKET;
            double top = begun.stream().mapToDouble(HeadPlace::y).min().orElseThrow() - beyond;
            double bottom = begun.stream().mapToDouble(HeadPlace::y).max().orElseThrow() + beyond;
            add(sketch.notation(), owner, shapes(spread, x - Columns.leftOfMain(column), top, bottom));
        }
        if (sketch.options().staves().hasTab()) {
            var strings =
                    begun.stream().mapToInt(head -> head.head().note().string()).summaryStatistics();
            double right =
                    x + Column.MIDDLE - Labels.reach(column.cells()) - Labels.leftOfLabel(column.cells()) - FROM_NUMBER;
            double top = Measures.stringY(strings.getMin()) - BEYOND_NUMBER;
            double bottom = Measures.stringY(strings.getMax()) + BEYOND_NUMBER;
            add(sketch.tab(), owner, shapes(spread, right - width(), top, bottom));
        }
    }

    private static List<HeadPlace> begun(Cell cell) {
        return cell.heads().stream().filter(head -> !head.head().tiedFrom()).toList();
    }

    private static void add(Layer layer, Passage owner, List<Shape> shapes) {
        shapes.forEach(shape -> layer.add(Kind.SPREAD, owner, shape));
    }

    private static double width() {
        return MusicFont.bravura().box(Glyph.ROLL_WAVE).height();
    }

    private static List<Shape> shapes(Spread spread, double left, double top, double bottom) {
        return switch (spread) {
            case ROLL -> wave(left, top, bottom, FEWEST);
            case ROLL_UP -> arrowed(wave(left, top + ARROW, bottom, 1), left, top, 1);
            case ROLL_DOWN -> arrowed(wave(left, top, bottom - ARROW, 1), left, bottom, -1);
            case BRACKET -> bracket(left, top, bottom);
        };
    }

    /** About as many pieces as fill the height, in its middle. */
    private static List<Shape> wave(double left, double top, double bottom, int fewest) {
        var box = MusicFont.bravura().box(Glyph.ROLL_WAVE);
        int count = Math.max(fewest, (int) Math.round((bottom - top) / box.width()));
        double start = (top + bottom) / 2 + count * box.width() / 2;
        var wave = new ArrayList<Shape>();
        for (int i = 0; i < count; i++) {
            var at = new Point(left - box.top(), start - i * box.width() + box.left());
            wave.addAll(Upright.of(Glyph.ROLL_WAVE, at));
        }
        return wave;
    }

    /** @param way 1 upward, -1 downward */
    private static List<Shape> arrowed(List<Shape> wave, double left, double tip, int way) {
        double x = left + width() / 2;
        double base = tip + way * ARROW;
        var arrow = List.of(new Point(x, tip), new Point(x + ARROW / 2, base), new Point(x - ARROW / 2, base));
        var shapes = new ArrayList<>(wave);
        shapes.add(new Shape.Polygon(arrow));
        return shapes;
    }

    private static List<Shape> bracket(double left, double top, double bottom) {
        double x = left + LINE / 2;
        double right = left + HOOK;
        return List.of(
                new Shape.Stroke(new Point(x, top), new Point(x, bottom), LINE),
                new Shape.Stroke(new Point(x, top), new Point(right, top), LINE),
                new Shape.Stroke(new Point(x, bottom), new Point(right, bottom), LINE));
    }

    /** For a legend. */
    public static List<Shape> sample(Spread spread) {
        return shapes(spread, 0, SAMPLE_TOP, SAMPLE_BOTTOM);
    }
}
