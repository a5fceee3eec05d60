package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.curve.Reached.End;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Columns;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How the fretting hand comes from note to note without a new stroke: a slur on both staves, its letter on the
 * tablature or on a notation staff alone. A slur belongs to the heads that move (rule: curve-at-its-heads,
 * slur-letter-once, slur-side). Notes that are reached together share one slur.
 */
public final class Slurs implements Concern {
    private static final double OFF_HEAD = 0.85;
    private static final double OFF_SMALL = 0.75;
    private static final double OFF_STEM = 0.35;
    private static final double BESIDE_HEAD = 0.3;
    private static final double OFF_CENTRE = 0.5;
    private static final double OFF_NUMBER = 0.95;
    private static final double SHORTEST = 1;
    private static final double SHORT = 2.2;

    @Override
    public void draw(Sketch sketch) {
        var slurred = Reached.of(sketch).stream().filter(Reached::slurred).toList();
        if (sketch.options().staves().hasNotation()) {
            notation(sketch, apart(slurred));
        }
        if (sketch.options().staves().hasTab()) {
            tab(sketch, apart(slurred));
        }
    }

    /** One of those that lead from one moment to one moment: that on the highest string. */
    private static List<Reached> apart(List<Reached> all) {
        return all.stream()
                .filter(each -> all.stream().noneMatch(other -> other.besides(each) && other.string() < each.string()))
                .toList();
    }

    private static void notation(Sketch sketch, List<Reached> all) {
        var layer = sketch.notation();
        for (var each : all) {
            boolean usual = isAbove(each);
            var drawn = Stream.of(usual, !usual)
                    .flatMap(above -> near(layer, each, above).stream())
                    .findFirst()
                    .or(() -> Stream.of(usual, !usual)
                            .flatMap(above ->
                                    Arches.clearOfHeads(layer, from(layer, each, above), to(layer, each, above), above)
                                            .stream())
                            .findFirst())
                    .orElseGet(() -> fromNowhere(layer, each, usual));
            layer.add(Kind.SLUR, each.owner(), drawn);
            if (!sketch.options().staves().hasTab() && each.target().isPresent()) {
                SlurLetters.add(sketch, each.kind(), each.owner(), drawn.box().middle(), drawn.isAbove());
            }
        }
    }

    /** A short slur to its head, since there is no way from its first note. */
    private static Shape.Curve fromNowhere(Layer layer, Reached each, boolean above) {
        var to = to(layer, each, above);
        double left = Math.max(from(layer, each, above).x(), to.x() - SHORT);
        return Arches.overHeads(layer, new Point(left, to.y()), to, above);
    }

    private static Optional<Shape.Curve> near(Layer layer, Reached each, boolean above) {
        return Arches.near(layer, from(layer, each, above), to(layer, each, above), above);
    }

    private static Point from(Layer layer, Reached each, boolean above) {
        return each.source()
                .map(end -> layer.end(end.head())
                        .map(at -> at.moved(0, above ? -OFF_SMALL : OFF_SMALL))
                        .orElseGet(() -> leaving(end, above)))
                .orElseGet(() -> new Point(
                        Math.min(each.start(), to(layer, each, above).x() - SHORTEST),
                        to(layer, each, above).y()));
    }

    private static Point to(Layer layer, Reached each, boolean above) {
        return each.target()
                .map(end -> arriving(end, above))
                .orElseGet(() -> new Point(
                        Math.max(each.end(), from(layer, each, above).x() + SHORTEST),
                        from(layer, each, above).y()));
    }

    /** Over or under its head, right of a stem that points the same way; beside it where other heads lie there. */
    private static Point leaving(End end, boolean above) {
        var head = end.head();
        int out = above ? -1 : 1;
        var cell = end.spot().cell();
        if (!end.isOuter(above)) {
            return new Point(end.spot().x() + cell.headsRight() + BESIDE_HEAD, head.y() + out * BESIDE_HEAD);
        }
        boolean stem = above && cell.up() && cell.hasStem();
        double x = end.spot().x() + (stem ? cell.stemDx() + Measures.STEM + OFF_STEM : (head.dx() + head.right()) / 2);
        return new Point(x, head.y() + out * (stem ? OFF_CENTRE : OFF_HEAD));
    }

    /** As {@link #leaving}, left of a stem that points the same way. */
    private static Point arriving(End end, boolean above) {
        var head = end.head();
        int out = above ? -1 : 1;
        var cell = end.spot().cell();
        if (!end.isOuter(above)) {
            double left = Columns.leftOfMain(end.spot().column());
            return new Point(end.spot().x() - left - BESIDE_HEAD, head.y() + out * BESIDE_HEAD);
        }
        boolean stem = !above && !cell.up() && cell.hasStem();
        boolean stemBehind = above && cell.up() && cell.hasStem();
        double x = end.spot().x() + (stem ? cell.stemDx() - OFF_STEM : (head.dx() + head.right()) / 2);
        return new Point(stemBehind ? x - OFF_STEM : x, head.y() + out * (stem ? OFF_CENTRE : OFF_HEAD));
    }

    /** How far a column's marks reach to the left of its place. */
    static double columnLeft(Spot spot) {
        return spot.column().left();
    }

    /** Of a chord, on the side of the head that moves; else on the heads' side where both stems agree, else above. */
    private static boolean isAbove(Reached each) {
        var ends = Stream.concat(each.source().stream(), each.target().stream()).toList();
        var cell = ends.get(ends.size() - 1).spot().cell();
        if (cell.voices() > 1) {
            return cell.voice() == 0;
        }
        if (ends.stream().allMatch(End::isAlone)) {
            return !ends.stream().allMatch(end -> end.spot().cell().up());
        }
        return ends.stream().filter(end -> !end.isAlone()).allMatch(end -> end.isOuter(true));
    }

    private static void tab(Sketch sketch, List<Reached> all) {
        for (var each : all) {
            double start = start(sketch.tab(), each);
            var curve = overNumbers(sketch.tab(), start, each.end(), Measures.stringY(each.string()), OFF_NUMBER);
            sketch.tab().add(Kind.SLUR, each.owner(), curve);
            if (each.target().isPresent()) {
                SlurLetters.add(sketch, each.kind(), each.owner(), (start + each.end()) / 2, true);
            }
        }
    }

    /** Behind the arrow of a bend, where there is room for a curve. */
    private static double start(Layer tab, Reached each) {
        return each.source()
                .flatMap(end -> tab.end(end.head()))
                .map(at -> Math.max(each.start(), Math.min(at.x(), each.end() - SHORTEST)))
                .orElse(each.start());
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
