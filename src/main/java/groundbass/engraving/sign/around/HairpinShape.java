package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Column;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Fraction;
import groundbass.score.Hairpins.Reach;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.List;
import java.util.Optional;

/**
 * The part of a hairpin that lies on one system: two lines that open or close; over a system break each part is open at
 * the break (rule: hairpin-lines).
 */
final class HairpinShape {
    private static final double OPEN = 1.1;
    private static final double GAP = 0.5;
    private static final double FROM_BARLINE = 0.3;
    private static final double SHORTEST = 1.2;

    /** How far it is open at its thin end where it comes from another system, and at its open end where it goes on. */
    private static final double AFTER_BREAK = 0.4;

    private static final double BEFORE_BREAK = 0.7;

    /** The height of its middle over the baseline of the letters. */
    private static final double MIDDLE = -0.55;

    private final Sketch sketch;
    private final Reach reach;

    HairpinShape(Sketch sketch, Reach reach) {
        this.sketch = sketch;
        this.reach = reach;
    }

    boolean isHere() {
        return reach.bar() <= sketch.plan().lastIndex()
                && reach.lastBar() >= sketch.plan().firstIndex()
                && !leadsTo(sketch.plan().firstIndex());
    }

    /** Whether it comes from before a bar and goes no further than to its first note: it ends at the bar line. */
    private boolean leadsTo(int bar) {
        return reach.bar() < bar && reach.lastBar() == bar && reach.end().equals(Fraction.ZERO);
    }

    Passage owner() {
        var bars = sketch.plan().bars();
        var number = bars.get(0).bar().number() - bars.get(0).index();
        return new Passage(
                new Position(number + reach.bar(), reach.hairpin().at()),
                new Position(number + reach.lastBar(), reach.end()));
    }

    /**
     * On the baseline of the letters.
     *
     * @param left the right end of the dynamic that it begins with
     * @param right the left end of the dynamic that it leads to
     */
    List<Shape> shapes(Optional<Double> left, Optional<Double> right) {
        boolean begins = reach.bar() >= sketch.plan().firstIndex();
        boolean leaves = reach.lastBar() > sketch.plan().lastIndex();
        boolean ends = !leaves || leadsTo(sketch.plan().lastIndex() + 1);
        var bars = sketch.plan().bars();
        double from = begins
                ? left.map(x -> x + GAP).orElseGet(this::start)
                : bars.get(0).start();
        double to = leaves
                ? bars.get(bars.size() - 1).end() - FROM_BARLINE
                : right.map(x -> x - GAP).orElseGet(this::end);
        boolean grows = reach.hairpin().way() == Hairpin.Way.CRESCENDO;
        double thin = (grows ? begins : ends) ? 0 : AFTER_BREAK;
        double wide = (grows ? ends : begins) ? 1 : BEFORE_BREAK;
        double shifted = Math.min(from, sketch.plan().width() - SHORTEST);
        return lines(shifted, Math.max(to, shifted + SHORTEST), grows ? thin : wide, grows ? wide : thin);
    }

    private static List<Shape> lines(double from, double to, double openFrom, double openTo) {
        double half = OPEN / 2;
        return List.of(
                line(from, -half * openFrom, to, -half * openTo), line(from, half * openFrom, to, half * openTo));
    }

    private static Shape line(double x1, double y1, double x2, double y2) {
        return new Shape.Stroke(new Point(x1, MIDDLE + y1), new Point(x2, MIDDLE + y2), Measures.HAIRPIN);
    }

    private double start() {
        return span(reach.bar()).x(reach.hairpin().at());
    }

    private double end() {
        var span = span(reach.lastBar());
        Fraction barEnd = sketch.written(span).bar().to();
        boolean atBarEnd = !reach.end().isBefore(barEnd);
        return atBarEnd ? span.end() - FROM_BARLINE : span.x(reach.end()) + Column.MIDDLE - GAP;
    }

    /** The bar of this index, or the one that stands for it among silent bars. */
    private BarSpan span(int index) {
        return sketch.plan().bars().stream()
                .filter(span -> span.index() <= index)
                .reduce((earlier, later) -> later)
                .orElseThrow();
    }
}
