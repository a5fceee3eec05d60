package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;

/** Ties and slurs as curves: flat over a distance, never a half circle over a short one (rule: tie-flat, slur-leans). */
final class Curves {
    private static final double LOWEST = 0.45;
    private static final double HIGHEST = 1.5;
    private static final double HEIGHT_PER_SPACE = 0.09;
    private static final double LEANING = 0.5;
    private static final double MOST_LEANING = 0.1;

    private static final double FLATTEST = 0.35;
    private static final double HIGHEST_TIE = 0.95;
    private static final double SHORT = 2;
    private static final double TIE_HEIGHT_PER_SPACE = 0.05;
    private static final double TIE_BEND = 1.4;
    private static final double OFF_LINE = 0.2;

    private Curves() {}

    /** How a curve goes from point to point. */
    @FunctionalInterface
    interface Bow {
        /** @param share of the length at which the curve bends; a small one rises steeply from its ends */
        Shape.Curve between(Point from, Point to, boolean above, double share);
    }

    /** Leaning to its higher end where it lies above, to its lower one where it lies below. */
    static Shape.Curve slur(Point from, Point to, boolean above, double share) {
        double length = to.x() - from.x();
        double height = height(length);
        double rise = (from.y() - to.y()) / Math.max(1, length);
        double lean = Math.max(-MOST_LEANING, Math.min(MOST_LEANING, LEANING * share * rise)) * (above ? 1 : -1);
        return curve(from, to, above, height, share + lean, share - lean);
    }

    private static double height(double length) {
        return Math.min(HIGHEST, LOWEST + HEIGHT_PER_SPACE * length);
    }

    /** How far a slur's control points may be lifted until it is so high for its length; 0 where it is that already. */
    static double liftUntil(double share, double length) {
        return Math.max(0, share * length - height(length)) / 0.75;
    }

    /** Level, and flatter the shorter it is; its middle keeps off the lines of a staff. */
    static Shape.Curve tie(Point from, Point to, boolean above, double share) {
        double length = to.x() - from.x();
        double height = Math.min(HIGHEST_TIE, FLATTEST + TIE_HEIGHT_PER_SPACE * Math.max(0, length - SHORT));
        double bend = Math.min(share, TIE_BEND / length);
        return curve(from, to, above, offLine(from.y(), height, above), bend, bend);
    }

    /** The height, a little lower where the middle would lie on a staff line, or a little higher. */
    private static double offLine(double y, double height, boolean above) {
        double middle = above ? y - height : y + height;
        double line = Math.rint(middle);
        boolean onLine = line >= 0 && line <= Measures.STAFF_HEIGHT && Math.abs(middle - line) < OFF_LINE;
        if (!onLine) {
            return height;
        }
        double beyond = above ? middle - line : line - middle;
        double lower = height + beyond - OFF_LINE;
        return lower >= FLATTEST ? lower : height + beyond + OFF_LINE;
    }

    private static Shape.Curve curve(
            Point from, Point to, boolean above, double height, double shareFrom, double shareTo) {
        double lift = (above ? -1 : 1) * height / 0.75;
        double length = to.x() - from.x();
        double rise = to.y() - from.y();
        return new Shape.Curve(
                from,
                new Point(from.x() + length * shareFrom, from.y() + rise * shareFrom + lift),
                new Point(to.x() - length * shareTo, to.y() - rise * shareTo + lift),
                to,
                Measures.CURVE_ENDS,
                Measures.CURVE_MIDDLE);
    }
}
