package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.staff.Tuplets;
import groundbass.score.Swing;
import java.util.ArrayList;
import java.util.List;

/**
 * How a written pair is played, in notes: two eighths are a quarter and an eighth of a triplet (common practice, no
 * source). Only two to one has a usual sign; other ratios are said in words.
 */
public final class SwingSign {
    private static final double SCALE = 0.6;
    private static final double LINE = 0.12;
    private static final double BEAM = 0.32;
    private static final double BEAM_STEP = 0.5;
    private static final double APART = 0.7;
    private static final double BRACKET = 2.1;
    private static final double HOOK = 0.35;
    private static final double FIGURE = 0.6;
    private static final double SIZE = 1.6;

    private final List<Shape> shapes = new ArrayList<>();
    private double x;

    private SwingSign() {}

    /** On a baseline of height zero, beginning at zero; nothing where there is no usual sign. */
    public static List<Shape> shapes(Swing swing) {
        if (swing.first() != 2 || swing.second() != 1) {
            return List.of();
        }
        boolean eighths = swing.unit().equals(Swing.EIGHTHS);
        var sign = new SwingSign();
        sign.beamed(eighths ? 1 : 2);
        sign.equals();
        sign.triplet(eighths ? Glyph.MET_QUARTER : Glyph.MET_8, eighths ? Glyph.MET_8 : Glyph.MET_16);
        return sign.shapes;
    }

    private Box note(Glyph glyph) {
        var note = new Shape.Sign(glyph, new Point(x, 0), SCALE);
        shapes.add(note);
        x = note.box().right();
        return note.box();
    }

    private void beamed(int beams) {
        var first = note(Glyph.MET_QUARTER);
        x += APART;
        var second = note(Glyph.MET_QUARTER);
        for (int i = 0; i < beams; i++) {
            double top = first.top() + i * BEAM_STEP;
            shapes.add(new Shape.Rect(new Box(first.right() - LINE, top, second.right(), top + BEAM)));
        }
    }

    private void equals() {
        var run = new Shape.Run("=", Face.REGULAR, SIZE, new Point(x + APART, 0), Align.START);
        shapes.add(run);
        x = run.box().right() + APART;
    }

    private void triplet(Glyph longer, Glyph shorter) {
        double left = x;
        note(longer);
        x += APART;
        note(shorter);
        double y = -BRACKET - HOOK;
        var figure = Tuplets.figures(3, (left + x) / 2, FIGURE);
        var box = Tuplets.box(figure);
        figure.forEach(each -> shapes.add(each.moved(0, y + box.height() / 2)));
        Tuplets.bracket(shapes, left, x, box, y, HOOK);
    }
}
