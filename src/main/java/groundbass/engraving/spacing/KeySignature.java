package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import java.util.ArrayList;
import java.util.List;

/** Sharps and flats at the head of a staff, at their places in bass clef (rule: key-signature-places). */
public final class KeySignature {
    private static final List<Integer> SHARPS = List.of(6, 3, 7, 4, 1, 5, 2);
    private static final List<Integer> FLATS = List.of(2, 5, 1, 4, 0, 3, -1);
    private static final double STEP = 1.02;
    private static final double FLAT_STEP = 0.94;

    private KeySignature() {}

    /** The staff positions of a signature's signs, in order. */
    public static List<Integer> positions(int fifths) {
        return (fifths > 0 ? SHARPS : FLATS).subList(0, Math.abs(fifths));
    }

    static double width(int fifths) {
        return Math.abs(fifths) * (fifths > 0 ? STEP : FLAT_STEP);
    }

    /** @param cancelled the old signature, where naturals take it back */
    public static double width(int fifths, int cancelled) {
        return fifths == 0 ? width(cancelled) : width(fifths);
    }

    public static List<Shape> shapes(int fifths, int cancelled, double x) {
        int shown = fifths == 0 ? cancelled : fifths;
        var glyph = fifths == 0 ? Glyph.NATURAL : fifths > 0 ? Glyph.SHARP : Glyph.FLAT;
        var shapes = new ArrayList<Shape>();
        double at = x;
        for (int position : positions(shown)) {
            shapes.add(new Shape.Sign(glyph, new Point(at, Measures.y(position)), 1));
            at += shown > 0 ? STEP : FLAT_STEP;
        }
        return shapes;
    }
}
