package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.Accidentals;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.engraving.spacing.Positions;
import groundbass.score.Ornaments.Bend;
import groundbass.theory.Pitch;
import groundbass.writing.Head.Accidental;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a bend sounds, on a notation staff over a tablature: a curve to a small head in parentheses (rule:
 * bend-in-staff). Its size is said once, on the tablature; a bend by a quarter tone has no head. What is bent before it is
 * struck has a large head where it sounds, and before that the small one of its fret, on any notation staff.
 */
public final class BentHeads implements Concern {
    private static final double SCALE = Measures.GRACE_SCALE;
    private static final double FROM_HEAD = 0.4;
    private static final double BETWEEN = 0.08;
    private static final double OFF_HEAD = 0.85;
    private static final double OFF_SMALL = 0.75;

    @Override
    public void draw(Sketch sketch) {
        boolean both = sketch.options().staves() == Staves.BOTH;
        for (var spot : sketch.spots()) {
            double left = spot.x() + Math.max(Bends.inked(spot), flag(spot)) + FROM_HEAD;
            for (var head : spot.cell().heads()) {
                var one = new OfHead(sketch, spot, head);
                boolean begins = Labels.isShown(head.head());
                if (begins && head.head().bentBefore().isPresent()) {
                    left = one.before(left) + FROM_HEAD;
                } else if (begins && both && head.head().bent().isPresent()) {
                    left = one.after(left) + FROM_HEAD;
                }
            }
        }
    }

    /** How far a flag reaches that hangs down beside its head. */
    private static double flag(Spot spot) {
        return spot.cell().flags() > 0 && spot.cell().up()
                ? spot.cell().stemDx()
                        + MusicFont.bravura().width(Glyph.flag(spot.cell().flags(), true))
                : 0;
    }

    /** A small head in its parentheses. */
    private record Small(double middle, double y, double right) {
        Point off(boolean above) {
            return new Point(middle, y + (above ? -OFF_SMALL : OFF_SMALL));
        }
    }

    /** The small heads of one large one. */
    private record OfHead(Sketch sketch, Spot spot, HeadPlace head) {
        /** Left of it that of its fret, which is not heard; right of it the same where the string is let back. */
        double before(double left) {
            double x = spot.x() - Columns.leftOfAccidentals(spot.column()) - FROM_HEAD;
            small(
                    head.head().pitch(),
                    head.head().accidental(),
                    x - width(head.head().accidental()));
            return bend().released() ? back(large(), left) : left;
        }

        /** The right edge of what a curve leads to. */
        double after(double left) {
            var to = head.head().bent().orElseThrow();
            var small = small(to.pitch(), to.accidental(), left);
            curve(large(), small.off(isAbove()));
            if (bend().released()) {
                return back(small.off(isAbove()), small.right() + FROM_HEAD);
            }
            endsAt(small);
            return small.right();
        }

        /** To the pitch of its fret again, whose sign holds. */
        private double back(Point from, double left) {
            var small = small(head.head().pitch(), Optional.empty(), left);
            curve(from, small.off(isAbove()));
            endsAt(small);
            return small.right();
        }

        private void endsAt(Small small) {
            sketch.notation().end(head, new Point(small.middle(), small.y()));
        }

        private Bend bend() {
            return head.head().note().ornaments().bend().orElseThrow();
        }

        private boolean isAbove() {
            return spot.cell().heads().size() > 1
                    ? head.position() == spot.cell().highest()
                    : !spot.cell().up();
        }

        private Point large() {
            return new Point(spot.middle(), head.y() + (isAbove() ? -OFF_HEAD : OFF_HEAD));
        }

        private static double width(Optional<Accidental> sign) {
            var glyphs = new ArrayList<>(List.of(Glyph.PARENTHESIS_LEFT, Glyph.HEAD_BLACK, Glyph.PARENTHESIS_RIGHT));
            sign.ifPresent(each -> glyphs.add(Accidentals.glyph(each.sign())));
            return glyphs.stream().mapToDouble(OfHead::width).sum();
        }

        private static double width(Glyph glyph) {
            return MusicFont.bravura().box(glyph).width() * SCALE + BETWEEN;
        }

        private Small small(Pitch pitch, Optional<Accidental> sign, double left) {
            int position = Positions.sounding(pitch) - (spot.column().raised() ? Positions.OCTAVE : 0);
            double x = add(Kind.BEND, Glyph.PARENTHESIS_LEFT, left, position);
            if (sign.isPresent()) {
                // an accidental, which the curve keeps clear of
                x = add(Kind.ACCIDENTAL, Accidentals.glyph(sign.get().sign()), x, position);
            }
            double middle = x + Graces.headWidth() / 2;
            x = add(Kind.BEND, Glyph.HEAD_BLACK, x, position);
            double right = add(Kind.BEND, Glyph.PARENTHESIS_RIGHT, x, position);
            return new Small(middle, Measures.y(position), right);
        }

        private double add(Kind kind, Glyph glyph, double left, int position) {
            var box = MusicFont.bravura().box(glyph);
            var at = new Point(left - box.left() * SCALE, Measures.y(position));
            sketch.notation().add(kind, spot.owner(), new Shape.Sign(glyph, at, SCALE));
            return left + width(glyph);
        }

        private void curve(Point from, Point to) {
            var curve = Arches.near(sketch.notation(), from, to, isAbove())
                    .orElseGet(() -> Arches.overHeads(sketch.notation(), from, to, isAbove()));
            sketch.notation().add(Kind.BEND, spot.owner(), curve);
        }
    }
}
