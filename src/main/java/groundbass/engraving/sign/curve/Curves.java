package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;

/** Ties and slurs as curves: flat over a distance, never a half circle over a short one. */
public final class Curves {
    private static final double FLATTEST = 0.45;
    private static final double HIGHEST = 1.5;
    private static final double INWARD = 0.28;
    private static final double HEIGHT_PER_SPACE = 0.09;

    private Curves() {}

    public static Shape.Curve between(Point from, Point to, boolean above) {
        return between(from, to, above, INWARD);
    }

    /** @param share of the length at which the curve bends; a small one rises steeply from its ends */
    static Shape.Curve between(Point from, Point to, boolean above, double share) {
        double length = to.x() - from.x();
        double height = Math.min(HIGHEST, FLATTEST + HEIGHT_PER_SPACE * length);
        double lift = (above ? -1 : 1) * height / 0.75;
        double inward = length * share;
        double slope = (to.y() - from.y()) * share;
        return new Shape.Curve(
                from,
                new Point(from.x() + inward, from.y() + slope + lift),
                new Point(to.x() - inward, to.y() - slope + lift),
                to,
                Measures.CURVE_ENDS,
                Measures.CURVE_MIDDLE);
    }
}
