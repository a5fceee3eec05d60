package groundbass.engraving.sign;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the fretting hand comes from note to note without a new stroke: a slur with its letter, on both staves. Notes
 * that are reached together share one slur.
 */
final class Slurs implements Concern {
    private static final double OFF_HEAD = 0.85;
    private static final double OFF_NUMBER = 0.95;
    /** Of a slur that comes from nowhere, since there is no way for it from its first note. */
    private static final double SHORT = 2.2;

    private static final double OFF_STEM = 0.4;
    private static final double LETTER = 1.5;
    private static final double CLEAR = 0.3;

    @Override
    public void draw(Sketch sketch) {
        var slurred = new ArrayList<Reached>();
        for (var each : Reached.of(sketch)) {
            if (!sketch.options().letters().of(each.arrival().kind()).isEmpty()) {
                sketch.use(Sign.of(each.arrival().kind()));
            }
            if (each.slurred()) {
                slurred.add(each);
            }
        }
        if (sketch.options().staves().hasNotation()) {
            notation(sketch, together(slurred));
        }
        if (sketch.options().staves().hasTab()) {
            tab(sketch, together(slurred));
        }
    }

    /** One of those that lead from one moment to one moment: that on the highest string. */
    private static List<Reached> together(List<Reached> all) {
        return all.stream()
                .filter(each -> all.stream().noneMatch(other -> other.besides(each) && other.string() < each.string()))
                .toList();
    }

    private static void notation(Sketch sketch, List<Reached> all) {
        var above = new Row(0.2);
        var below = new Row(0.2);
        for (var each : all) {
            boolean usual = isAbove(each);
            var clear = curve(sketch, each, usual);
            boolean over = clear.isPresent() == usual;
            var curve = clear.or(() -> curve(sketch, each, over))
                    .orElseGet(() -> Arches.over(
                            sketch.notation(),
                            end(sketch, Optional.empty(), each.target().middle() - SHORT, each, over),
                            end(sketch, each, over),
                            over));
            sketch.notation().add(Kind.SLUR, each.target().owner(), curve);
            letter(sketch, over ? above : below, each, curve.box().middle());
        }
        above.placeEachAbove(sketch.notation(), CLEAR);
        below.placeEachBelow(sketch.notation(), CLEAR);
    }

    private static Optional<Shape.Curve> curve(Sketch sketch, Reached each, boolean above) {
        return Arches.clear(sketch.notation(), start(sketch, each, above), end(sketch, each, above), above);
    }

    private static Point start(Sketch sketch, Reached each, boolean above) {
        return end(sketch, each.source(), each.sourceMiddle(), each, above);
    }

    private static Point end(Sketch sketch, Reached each, boolean above) {
        return end(sketch, Optional.of(each.target()), each.target().middle(), each, above);
    }

    private static void letter(Sketch sketch, Row row, Reached each, double middle) {
        String letter = sketch.options().letters().of(each.arrival().kind());
        if (!letter.isEmpty()) {
            var run = new Shape.Run(letter, Face.ITALIC, LETTER, new Point(middle, 0), Align.MIDDLE);
            row.add(Kind.SLUR_LETTER, each.target().owner(), run);
        }
    }

    /** How far a column's marks reach to the left of its place. */
    static double columnLeft(Spot spot) {
        return spot.column().left();
    }

    /** On the heads' side where both stems agree, else above. */
    private static boolean isAbove(Reached each) {
        var target = each.target().cell();
        if (target.voices() > 1) {
            return target.voice() == 0;
        }
        return !(target.up() && each.source().map(spot -> spot.cell().up()).orElse(true));
    }

    /** Over (or under) the heads, or past the stem where that points the same way. */
    private static Point end(Sketch sketch, Optional<Spot> spot, double x, Reached each, boolean above) {
        if (spot.isEmpty()) {
            return new Point(x, each.head().y() + (above ? -OFF_HEAD : OFF_HEAD));
        }
        var cell = spot.get().cell();
        if (cell.up() == above && cell.hasStem()) {
            double tip = sketch.tip(spot.get()).orElse(each.head().y());
            return new Point(spot.get().stemLeft(), tip + (above ? -OFF_STEM : OFF_STEM));
        }
        double head = Measures.y(above ? cell.highest() : cell.lowest());
        return new Point(x, head + (above ? -OFF_HEAD : OFF_HEAD));
    }

    private static void tab(Sketch sketch, List<Reached> all) {
        var letters = new Row(0.2);
        for (var each : all) {
            double from = each.sourceMiddle();
            double to = each.target().middle();
            var curve = overNumbers(sketch.tab(), from, to, Measures.stringY(each.string()), OFF_NUMBER);
            sketch.tab().add(Kind.SLUR, each.target().owner(), curve);
            letter(sketch, letters, each, (from + to) / 2);
        }
        letters.placeAbove(sketch.tab(), CLEAR);
    }

    /** Over the numbers on a string (rule: tab-slurs); under them where other numbers stand in the way. */
    static Shape.Curve overNumbers(Layer tab, double from, double to, double string, double off) {
        var fromAbove = new Point(from, string - off);
        var toAbove = new Point(to, string - off);
        return Arches.plain(tab, fromAbove, toAbove, true)
                .or(() -> Arches.plain(tab, new Point(from, string + off), new Point(to, string + off), false))
                .orElseGet(() -> Arches.over(tab, fromAbove, toAbove, true));
    }
}
