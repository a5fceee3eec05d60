package groundbass.engraving;

import groundbass.score.Arrival;
import groundbass.score.Place;
import java.util.Optional;

/**
 * How the fretting hand comes from note to note: a slur with its letter for a hammer-on, a pull-off or a slide without
 * a new stroke, a line for every slide; on both staves.
 */
final class Slurs implements Concern {
    private static final double OFF_HEAD = 0.85;
    private static final double OFF_NUMBER = 0.95;
    private static final double LINE = 0.16;
    private static final double LETTER = 1.5;
    private static final double CLEAR = 0.3;
    private static final double HIGHEST_LIFT = 8;

    @Override
    public void draw(Sketch sketch) {
        var letters = new Row(0.2);
        for (int i = 0; i < sketch.spots().size(); i++) {
            for (var head : sketch.spots().get(i).cell().heads()) {
                if (Labels.isShown(head.head())) {
                    int index = i;
                    head.head()
                            .note()
                            .arrival()
                            .filter(arrival -> !arrival.isGrace())
                            .ifPresent(arrival -> arrive(sketch, index, head, arrival, letters));
                }
            }
        }
        if (sketch.options().staves().hasTab()) {
            letters.placeAbove(sketch.tab(), CLEAR);
        }
    }

    private static void arrive(Sketch sketch, int index, HeadPlace head, Arrival arrival, Row letters) {
        var target = sketch.spots().get(index);
        var source = source(sketch, index, head);
        var note = head.head().note();
        sketch.use(Sign.of(arrival.kind()));
        boolean slurred = note.pluck().isEmpty();
        var letter = sketch.options().letters().of(arrival.kind());
        if (sketch.options().staves().hasNotation()) {
            notation(sketch, source, target, head, arrival, slurred, letter);
        }
        if (sketch.options().staves().hasTab()) {
            tab(sketch, source, target, head, arrival, slurred);
            double middle = (sourceMiddle(source, target) + target.middle()) / 2;
            if (slurred) {
                letters.add(Kind.SLUR_LETTER, target.owner(), letter(letter, middle));
            }
        }
    }

    private static Shape letter(String letter, double middle) {
        return new Shape.Run(letter, Face.ITALIC, LETTER, new Point(middle, 0), Align.MIDDLE);
    }

    /** The last spot before on the same string, if it is on this system. */
    private static Optional<Spot> source(Sketch sketch, int index, HeadPlace head) {
        var onset = sketch.spots().get(index).x();
        for (int i = index - 1; i >= 0; i--) {
            var spot = sketch.spots().get(i);
            if (spot.x() < onset && on(spot, head.head().note().string()).isPresent()) {
                return Optional.of(spot);
            }
        }
        return Optional.empty();
    }

    private static Optional<HeadPlace> on(Spot spot, int string) {
        return spot.cell().heads().stream()
                .filter(head -> head.head().note().string() == string)
                .findFirst();
    }

    private static double sourceMiddle(Optional<Spot> source, Spot target) {
        return source.map(Spot::middle).orElse(Math.min(target.span().start() - 0.6, target.middle() - 2));
    }

    private static void notation(
            Sketch sketch,
            Optional<Spot> source,
            Spot target,
            HeadPlace head,
            Arrival arrival,
            boolean slurred,
            String letter) {
        var layer = sketch.notation();
        var from = source.flatMap(spot -> on(spot, head.head().note().string()));
        double fromY = from.map(HeadPlace::y).orElse(head.y());
        if (arrival.kind() == Arrival.Kind.SLIDE) {
            double left = source.map(spot -> spot.x() + spot.cell().headsRight())
                    .orElse(target.span().start() - 0.8);
            double right = target.x() - columnLeft(target);
            layer.add(
                    Kind.SLIDE, target.owner(), slide(left + 0.2, fromY, right - 0.2, head.y(), direction(from, head)));
        }
        if (slurred) {
            boolean above = isAbove(source, target);
            var start = end(sketch, source, sourceMiddle(source, target), fromY, above);
            var end = end(sketch, Optional.of(target), target.middle(), head.y(), above);
            var curve = cleared(sketch, start, end, above);
            layer.add(Kind.SLUR, target.owner(), curve);
            var shape = letter(letter, curve.box().middle());
            var box = shape.box();
            double y = above
                    ? layer.top(box.left(), box.right()) - CLEAR
                    : layer.bottom(box.left(), box.right()) + CLEAR - box.top();
            layer.add(Kind.SLUR_LETTER, target.owner(), shape.moved(0, y));
        }
    }

    /** Arched so far that the notes in between stay under it. */
    private static Shape.Curve cleared(Sketch sketch, Point start, Point end, boolean above) {
        var plain = Curves.between(start, end, above);
        var curve = plain;
        for (double lift = 0.5; lift < HIGHEST_LIFT && crosses(sketch, curve, above); lift += 0.5) {
            double dy = above ? -lift : lift;
            curve = new Shape.Curve(
                    start, plain.first().moved(0, dy), plain.second().moved(0, dy), end, plain.ends(), plain.middle());
        }
        return curve;
    }

    private static boolean crosses(Sketch sketch, Shape.Curve curve, boolean above) {
        for (var spot : sketch.spots()) {
            double share = (spot.middle() - curve.from().x())
                    / (curve.to().x() - curve.from().x());
            if (!spot.cell().isRest() && share > 0.1 && share < 0.9) {
                double y = curve.at(share).y();
                if (above ? y > top(sketch, spot) : y < bottom(sketch, spot)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double top(Sketch sketch, Spot spot) {
        double head = Measures.y(spot.cell().highest()) - OFF_HEAD;
        return spot.cell().up() ? Math.min(head, sketch.tip(spot).orElse(head) - CLEAR) : head;
    }

    private static double bottom(Sketch sketch, Spot spot) {
        double head = Measures.y(spot.cell().lowest()) + OFF_HEAD;
        return spot.cell().up() ? head : Math.max(head, sketch.tip(spot).orElse(head) + CLEAR);
    }

    static double columnLeft(Spot spot) {
        return spot.span().bar().columns().stream()
                .filter(column -> column.cells().contains(spot.cell()))
                .mapToDouble(Column::left)
                .findFirst()
                .orElse(0);
    }

    /** On the heads' side where both stems agree, else above. */
    private static boolean isAbove(Optional<Spot> source, Spot target) {
        if (target.cell().voices() > 1) {
            return target.cell().voice() == 0;
        }
        boolean bothUp =
                target.cell().up() && source.map(spot -> spot.cell().up()).orElse(true);
        return !bothUp;
    }

    /** Over (or under) the head, or past the stem where that points the same way. */
    private static Point end(Sketch sketch, Optional<Spot> spot, double x, double y, boolean above) {
        double off = above ? -OFF_HEAD : OFF_HEAD;
        var stemmed =
                spot.filter(each -> each.cell().up() == above && each.cell().hasStem());
        if (stemmed.isEmpty()) {
            return new Point(x, y + off);
        }
        double tip = stemmed.flatMap(sketch::tip).orElse(y);
        return new Point(stemmed.get().stemLeft(), tip + (above ? -0.4 : 0.4));
    }

    private static void tab(
            Sketch sketch, Optional<Spot> source, Spot target, HeadPlace head, Arrival arrival, boolean slurred) {
        double y = Measures.stringY(head.head().note().string());
        double left = sourceMiddle(source, target);
        var from = source.flatMap(spot -> on(spot, head.head().note().string()));
        if (arrival.kind() == Arrival.Kind.SLIDE) {
            double start = left + from.map(Slurs::reach).orElse(0.0) + 0.2;
            double end = target.middle() - reach(head) - 0.2;
            sketch.tab().add(Kind.SLIDE, target.owner(), slide(start, y, end, y, direction(from, head)));
        }
        if (slurred) {
            var curve =
                    Curves.between(new Point(left, y - OFF_NUMBER), new Point(target.middle(), y - OFF_NUMBER), true);
            sketch.tab().add(Kind.SLUR, target.owner(), curve);
        }
    }

    private static double reach(HeadPlace head) {
        return Labels.isShown(head.head()) ? Labels.width(Labels.text(head.head())) / 2 : 0;
    }

    /** Up the neck 1, down it -1. */
    private static int direction(Optional<HeadPlace> from, HeadPlace to) {
        int before = from.map(Slurs::fret).orElse(fret(to) - 1);
        return before <= fret(to) ? 1 : -1;
    }

    private static int fret(HeadPlace head) {
        return head.head().note().place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
    }

    /** A line that visibly rises or falls, even where both ends are on one height. */
    private static Shape slide(double left, double fromY, double right, double toY, int direction) {
        double tilt = Math.abs(fromY - toY) < 0.6 ? direction * 0.35 : direction * 0.1;
        double end = Math.max(right, left + 0.5);
        return new Shape.Stroke(new Point(left, fromY + tilt), new Point(end, toY - tilt), LINE);
    }
}
