package groundbass.engraving.sign;

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
import groundbass.writing.Head;

/** Ties from head to head, away from the stems (rule: curve-shape); over a system's end, half on each side. */
final class Ties implements Concern {
    private static final double FROM_HEAD = 0.14;
    private static final double OFF_CENTRE = 0.36;
    private static final double SHORTEST = 1.2;
    private static final double CUT = 0.5;
    private static final double MOST_CUT = 2.5;
    private static final double IN_REACH = 0.3;

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
        boolean above = isAbove(spot, h);
        double y = head.y() + (above ? -OFF_CENTRE : OFF_CENTRE);
        double left = spot.x() + tieLeft(spot, head) + FROM_HEAD;
        double right = Double.NaN;
        for (int i = index + 1; i < sketch.spots().size() && Double.isNaN(right); i++) {
            var next = sketch.spots().get(i);
            for (var other : next.cell().heads()) {
                if (continues(head.head(), other.head())) {
                    right = Math.max(left + SHORTEST, beforeSigns(next, y, next.x() + other.dx() - FROM_HEAD));
                }
            }
        }
        if (Double.isNaN(right)) {
            var last = sketch.plan().bars().get(sketch.plan().bars().size() - 1);
            right = last.end() - 0.2;
        }
        tie(sketch, spot, left, Math.max(right, left + 0.6), y, above);
    }

    /** Short of a sign that stands before another head of the column, at the tie's height. */
    private static double beforeSigns(Spot spot, double y, double right) {
        return spot.column().accidentals().stream()
                .map(sign -> sign.box().moved(spot.x(), 0))
                .filter(box -> box.top() < y + IN_REACH && box.bottom() > y - IN_REACH && box.left() < right)
                .mapToDouble(box -> box.left() - FROM_HEAD)
                .min()
                .orElse(right);
    }

    private static void in(Sketch sketch, Spot spot, int h) {
        var head = spot.cell().heads().get(h);
        boolean above = isAbove(spot, h);
        double right = spot.x() + head.dx() - FROM_HEAD;
        double left = Math.min(spot.span().start() - 0.6, right - SHORTEST);
        tie(sketch, spot, left, right, head.y() + (above ? -OFF_CENTRE : OFF_CENTRE), above);
    }

    private static void tie(Sketch sketch, Spot spot, double left, double right, double y, boolean above) {
        sketch.notation().add(Kind.TIE, spot.owner(), curve(sketch.notation(), left, right, y, above));
    }

    /** At its usual height, else ending earlier, else lifted over what is in the way. */
    private static Shape.Curve curve(Layer layer, double left, double right, double y, boolean above) {
        for (double to = right; to >= Math.max(left + SHORTEST, right - MOST_CUT); to -= CUT) {
            var curve = Arches.plain(layer, new Point(left, y), new Point(to, y), above);
            if (curve.isPresent()) {
                return curve.get();
            }
        }
        return Arches.over(layer, new Point(left, y), new Point(right, y), above);
    }

    /** Past the dots and a head beside it, which stand in the way of a tie on their height. */
    private static double tieLeft(Spot spot, HeadPlace head) {
        double heads = spot.cell().heads().stream()
                .filter(other -> Math.abs(other.position() - head.position()) <= 1)
                .mapToDouble(HeadPlace::right)
                .max()
                .orElse(head.right());
        return spot.cell().dots().stream()
                .mapToDouble(dot -> dot.dx() + MusicFont.bravura().width(Glyph.DOT))
                .max()
                .orElse(heads);
    }

    /** In two voices outward; of a chord, the upper half above; a single tie opposite the stem. */
    private static boolean isAbove(Spot spot, int head) {
        var cell = spot.cell();
        if (cell.voices() > 1) {
            return cell.voice() == 0;
        }
        int count = cell.heads().size();
        return count == 1 ? !cell.up() : head >= count / 2;
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
