package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Layer;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.score.Ornaments.Mark;

/** Staccato dots and the lines of tenuto by the head, inside the curves; a dot nearer than a line. */
public final class Articulations implements Concern {
    private static final double GAP = 0.35;

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            boolean dot = begins(spot, Mark.SHORT);
            if (dot) {
                sketch.use(Sign.SHORT);
                draw(sketch, spot, 0, Glyph.STACCATO_ABOVE, Glyph.STACCATO_BELOW);
            }
            if (begins(spot, Mark.TENUTO)) {
                sketch.use(Sign.TENUTO);
                draw(sketch, spot, dot ? 2 : 0, Glyph.TENUTO_ABOVE, Glyph.TENUTO_BELOW);
            }
        }
    }

    /** @param further steps of the staff beyond the next space */
    private static void draw(Sketch sketch, Spot spot, int further, Glyph over, Glyph under) {
        if (sketch.options().staves().hasNotation()) {
            byHead(sketch.notation(), spot, further, over, under);
        } else {
            outside(sketch.tab(), spot, isUpper(spot), over, under);
        }
    }

    /** On a tablature alone: beyond the stem. */
    private static boolean isUpper(Spot spot) {
        return spot.cell().voices() > 1 && spot.cell().voice() == 0;
    }

    static boolean begins(Spot spot, Mark mark) {
        return spot.cell().heads().stream()
                .anyMatch(head -> !head.head().tiedFrom() && head.head().note().has(mark));
    }

    /** Opposite the stem; in two voices outside. */
    static boolean onHeadSideAbove(Spot spot) {
        return spot.cell().voices() > 1
                ? spot.cell().voice() == 0
                : !spot.cell().up();
    }

    /** In the next space from the head; beyond the stem where that is in the way. */
    private static void byHead(Layer layer, Spot spot, int further, Glyph over, Glyph under) {
        boolean above = onHeadSideAbove(spot);
        if (above == spot.cell().up() && spot.cell().hasStem()) {
            outside(layer, spot, above, over, under);
            return;
        }
        int head = above ? spot.cell().highest() : spot.cell().lowest();
        int position = head + (above ? 2 + further : -2 - further);
        boolean onLine = position % 2 == 0 && position >= 0 && position <= 8;
        double y = Measures.y(position + (onLine ? (above ? 1 : -1) : 0));
        var box = MusicFont.bravura().box(over);
        double x = spot.middle() + spot.cell().shift() - box.middle();
        var at = new Point(x, y - (box.top() + box.bottom()) / 2);
        layer.add(Kind.ARTICULATION, spot.owner(), new Shape.Sign(over, at, 1));
    }

    static void outside(Layer layer, Spot spot, boolean above, Glyph over, Glyph under) {
        var glyph = above ? over : under;
        var box = MusicFont.bravura().box(glyph);
        double x = spot.middle() + spot.cell().shift() - box.middle();
        double left = x + box.left();
        double right = x + box.right();
        double y = above ? layer.top(left, right) - GAP - box.bottom() : layer.bottom(left, right) + GAP - box.top();
        layer.add(Kind.ARTICULATION, spot.owner(), new Shape.Sign(glyph, new Point(x, y), 1));
    }
}
