package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Heads;
import groundbass.writing.Head;
import java.util.Optional;

/**
 * Ties from head to head, away from the stems, above where those differ (rule: curve-shape); over a system's end, half on
 * each side (rule: curve-over-break). A tie stays at its heads: it passes a stem or a beam sooner than it leaves them
 * (rule: curve-at-its-heads, tie-or-slur).
 */
public final class Ties implements Concern {
    private static final double FROM_HEAD = 0.14;
    private static final double FROM_SIGN = 0.15;
    private static final double PARENTHESIS = 0.8;
    private static final double OFF_CENTRE = 0.36;
    private static final double OVER = 0.82;
    private static final double SHORTEST = 1.2;
    private static final double CUT = 0.5;
    private static final double MOST_CUT = 2.5;
    private static final double IN_REACH = 0.3;
    private static final double FROM_BARLINE = 0.2;

    @Override
    public void draw(Sketch sketch) {
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            for (int h = 0; h < spot.cell().heads().size(); h++) {
                if (spot.cell().heads().get(h).head().tiedTo()) {
                    out(sketch, i, h);
                }
                if (spot.cell().heads().get(h).head().tiedFrom() && isFirst(sketch, i)) {
                    in(sketch, spot, h);
                }
            }
        }
    }

    private static void out(Sketch sketch, int index, int h) {
        var spot = sketch.spots().get(index);
        var head = spot.cell().heads().get(h);
        var goal = goal(sketch, index, head.head());
        boolean above = isAbove(spot, goal.map(Goal::spot).orElse(spot), h);
        double y = head.y() + (above ? -OFF_CENTRE : OFF_CENTRE);
        double left = spot.x() + tieLeft(spot, head) + FROM_HEAD + parenthesis(head);
        double right = goal.map(to ->
                        beforeSigns(to.spot(), y, to.spot().x() + to.head().dx() - FROM_HEAD - parenthesis(to.head())))
                .orElseGet(() -> lastEnd(sketch) - FROM_BARLINE);
        double end = Math.max(right, left + (goal.isPresent() ? SHORTEST : 0.6));
        if (goal.isPresent() && end > right) {
            // no room between the heads: it lies over both of them
            double back = (end - right) / 2;
            double over = head.y() + (above ? -OVER : OVER);
            tie(sketch, spot, new Point(left - back, over), end - back, head, above);
            return;
        }
        tie(sketch, spot, new Point(left, y), end, head, above);
    }

    private static double parenthesis(HeadPlace head) {
        return Heads.isGhost(head.head()) ? PARENTHESIS : 0;
    }

    private static double lastEnd(Sketch sketch) {
        return sketch.plan().bars().get(sketch.plan().bars().size() - 1).end();
    }

    /** The head that a tie leads to. */
    private record Goal(Spot spot, HeadPlace head) {}

    private static Optional<Goal> goal(Sketch sketch, int index, Head head) {
        for (int i = index + 1; i < sketch.spots().size(); i++) {
            var next = sketch.spots().get(i);
            for (var other : next.cell().heads()) {
                if (continues(head, other.head())) {
                    return Optional.of(new Goal(next, other));
                }
            }
        }
        return Optional.empty();
    }

    /** Short of a sign that stands before another head of the column, at the tie's height. */
    private static double beforeSigns(Spot spot, double y, double right) {
        return spot.column().accidentals().stream()
                .map(sign -> sign.box().moved(spot.x(), 0))
                .filter(box -> box.top() < y + IN_REACH && box.bottom() > y - IN_REACH && box.left() < right)
                .mapToDouble(box -> box.left() - FROM_HEAD - FROM_SIGN)
                .min()
                .orElse(right);
    }

    /** From the right of the signature; {@link LineSystems} leaves room there. */
    private static void in(Sketch sketch, Spot spot, int h) {
        var head = spot.cell().heads().get(h);
        boolean above = isAbove(spot, spot, h);
        double right = spot.x() + head.dx() - FROM_HEAD - parenthesis(head);
        double left = Math.min(spot.span().start(), right - SHORTEST);
        double y = head.y() + (above ? -OFF_CENTRE : OFF_CENTRE);
        tie(sketch, spot, new Point(left, y), right, head, above);
    }

    /** On its own side, else on the other, else lifted over what no curve may cross. */
    private static void tie(Sketch sketch, Spot spot, Point from, double right, HeadPlace head, boolean above) {
        var layer = sketch.notation();
        var otherSide = new Point(from.x(), 2 * head.y() - from.y());
        var curve = near(layer, from, right, above)
                .or(() -> near(layer, otherSide, right, !above))
                .orElseGet(() -> Arches.tieOverHeads(layer, from, new Point(right, from.y()), above));
        layer.add(Kind.TIE, spot.owner(), curve);
    }

    /** At its usual height, else ending earlier. */
    private static Optional<Shape.Curve> near(Layer layer, Point from, double right, boolean above) {
        for (double to = right; to >= Math.max(from.x() + SHORTEST, right - MOST_CUT); to -= CUT) {
            var curve = Arches.tie(layer, from, new Point(to, from.y()), above);
            if (curve.isPresent()) {
                return curve;
            }
        }
        return Optional.empty();
    }

    /** Past the dots and a head beside it, which stand in the way of a tie on their height. */
    private static double tieLeft(Spot spot, HeadPlace head) {
        double heads = spot.cell().heads().stream()
                .filter(other -> Math.abs(other.position() - head.position()) <= 1)
                .mapToDouble(HeadPlace::right)
                .max()
                .orElse(head.right());
        return spot.cell().dots().stream()
                .mapToDouble(dot -> dot.dx() + MusicFont.bravura().width(Glyph.DOT) + FROM_SIGN)
                .max()
                .orElse(heads);
    }

    /** In two voices outward; of a chord, the upper half above; a single tie opposite the stems, or above. */
    private static boolean isAbove(Spot spot, Spot goal, int head) {
        var cell = spot.cell();
        if (cell.voices() > 1) {
            return cell.voice() == 0;
        }
        int count = cell.heads().size();
        return count == 1 ? !(cell.up() && goal.cell().up()) : head >= count / 2;
    }

    private static boolean continues(Head head, Head next) {
        return next.tiedFrom()
                && next.noteBar() == head.noteBar()
                && next.note().equals(head.note());
    }

    /** Whether what this spot continues lies on an earlier system. */
    private static boolean isFirst(Sketch sketch, int index) {
        var spot = sketch.spots().get(index);
        return spot.span().first()
                && spot.cell().index() == 0
                && spot.cell()
                        .element()
                        .onset()
                        .equals(sketch.written(spot.span()).bar().from());
    }
}
