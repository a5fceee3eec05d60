package groundbass.engraving.spacing;

import groundbass.engraving.mark.BarPlace;
import groundbass.score.Fraction;
import java.util.ArrayList;

/**
 * A bar in its place in a system.
 *
 * @param index in the line
 * @param left where its signs begin: behind the barline before it, or at the system's left edge
 * @param start where its notes may begin
 * @param columns the left edge of each column's heads
 * @param end where its closing line begins
 */
public record BarSpan(
        MeasuredBar bar,
        int index,
        boolean first,
        boolean last,
        double left,
        double start,
        double[] columns,
        double end,
        BarSigns.Closing closing) {
    /** From the start to a moment before any column. */
    static final double LEAD = 1;

    public double right() {
        return end + closing.width();
    }

    /** Where a moment lies: at its column, or in proportion between two. */
    public double x(Fraction at) {
        int before = bar.columnAt(at);
        var from = before < 0
                ? bar.written().bar().from()
                : bar.columns().get(before).onset();
        double left = before < 0 ? start + LEAD : columns[before];
        boolean last = before + 1 >= columns.length;
        var to = last ? bar.written().bar().to() : bar.columns().get(before + 1).onset();
        double right = last ? end : columns[before + 1];
        double share = at.minus(from).toDouble() / Math.max(1e-9, to.minus(from).toDouble());
        return left + share * (right - left);
    }

    public double middle() {
        return (start + end) / 2;
    }

    /** For whoever points at the page. */
    public BarPlace place() {
        var moments = new ArrayList<BarPlace.Moment>();
        for (int i = 0; i < columns.length; i++) {
            moments.add(new BarPlace.Moment(bar.columns().get(i).onset(), columns[i] + Column.MIDDLE));
        }
        return new BarPlace(
                bar.number(), left, right(), moments, bar.written().bar().to());
    }
}
