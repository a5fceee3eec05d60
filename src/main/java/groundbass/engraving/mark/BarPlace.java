package groundbass.engraving.mark;

import groundbass.score.Fraction;
import java.util.List;

/**
 * Where a bar lies along its system, for whoever points at the page.
 *
 * @param left behind the barline before it, or at the system's left edge
 * @param right its own barline's right edge
 * @param moments the middle of each column, in the order of time
 * @param end when the bar ends, from its first count
 */
public record BarPlace(int number, double left, double right, List<Moment> moments, Fraction end) {
    public BarPlace {
        moments = List.copyOf(moments);
    }

    /** A time in the bar and how far to the right it is drawn. */
    public record Moment(Fraction at, double x) {}

    /** Where a time of the bar lies: at its column, or in proportion between two. */
    public double x(Fraction at) {
        var before = new Moment(Fraction.ZERO, left);
        for (var moment : moments) {
            if (moment.at().isAfter(at)) {
                return between(before, moment, at);
            }
            before = moment;
        }
        return between(before, new Moment(end, right), at);
    }

    private static double between(Moment before, Moment after, Fraction at) {
        double whole = after.at().minus(before.at()).toDouble();
        double share = whole <= 0 ? 0 : at.minus(before.at()).toDouble() / whole;
        return before.x() + Math.max(0, Math.min(1, share)) * (after.x() - before.x());
    }

    BarPlace moved(double dx) {
        var shifted = moments.stream()
                .map(moment -> new Moment(moment.at(), moment.x() + dx))
                .toList();
        return new BarPlace(number, left + dx, right + dx, shifted, end);
    }
}
