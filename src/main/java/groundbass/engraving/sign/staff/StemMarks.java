package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Rect;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import java.util.EnumSet;
import java.util.Set;

/**
 * StemMarks and flags (rule: stem-length, stem-to-middle-line, flag-place): an octave long, longer where they must reach
 * the middle line.
 */
public final class StemMarks implements Concern {
    /** rule: stem-side: anchors of black heads and of crosses: how far from the head's middle a stem begins. */
    private static final double ROOT = 0.168;

    private static final double CROSS_ROOT = 0.44;
    private static final Set<Glyph> CROSSES = EnumSet.of(Glyph.X_BLACK, Glyph.X_HALF);
    private static final Set<Glyph> DIAMONDS = EnumSet.of(Glyph.DIAMOND_BLACK, Glyph.DIAMOND_HALF);

    /** rule: flag-place: how far flags of three and four strokes stand beyond the stem's normal end. */
    private static final double[] FLAG_BEYOND = {0, 0, 0, 0.376, 1.172};

    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            if (spot.cell().hasStem()) {
                draw(sketch, spot);
            }
        }
    }

    /** The far end of an unbeamed stem: an octave from the head, or the middle line if that is farther. */
    public static double tip(boolean up, int outerPosition) {
        int octave = outerPosition + (up ? 7 : -7);
        return Measures.y(up ? Math.max(octave, 4) : Math.min(octave, 4));
    }

    private static void draw(Sketch sketch, Spot spot) {
        var cell = spot.cell();
        double tip = sketch.tip(spot).orElseGet(() -> tip(cell.up(), spot.outerPosition()));
        sketch.tip(spot, tip);
        var root = cell.heads().get(cell.up() ? 0 : cell.heads().size() - 1);
        double from = root.y() + (cell.up() ? -1 : 1) * root(root.glyph());
        double beyond = FLAG_BEYOND[cell.flags()] * (cell.up() ? -1 : 1);
        double x = spot.stemLeft();
        sketch.notation()
                .add(
                        Kind.STEM,
                        spot.owner(),
                        new Rect(new Box(
                                x, Math.min(from, tip + beyond), x + Measures.STEM, Math.max(from, tip + beyond))));
        if (cell.flags() > 0) {
            var glyph = Glyph.flag(cell.flags(), cell.up());
            sketch.notation().add(Kind.FLAG, spot.owner(), new Shape.Sign(glyph, new Point(x, tip), 1));
        }
    }

    private static double root(Glyph head) {
        if (CROSSES.contains(head)) {
            return CROSS_ROOT;
        }
        return DIAMONDS.contains(head) ? 0 : ROOT;
    }
}
