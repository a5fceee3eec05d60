package groundbass.engraving.spacing;

import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.List;

/**
 * The bars of one system with every column in its place.
 *
 * @param width of its staff lines
 */
public record SystemPlan(List<BarSpan> bars, double width) {
    private static final double LOOSEST_LAST = 1.35;

    /** The music of the system. */
    public Passage passage() {
        var from = bars.get(0).bar();
        var last = bars.get(bars.size() - 1).bar();
        return new Passage(
                new Position(from.number(), from.written().bar().from()),
                new Position(last.number() + last.bars(), Fraction.ZERO));
    }

    public int firstIndex() {
        return bars.get(0).index();
    }

    public int lastIndex() {
        return bars.get(bars.size() - 1).index();
    }

    /** Justifies the bars from {@code first} on; the last system, and one that a wish ends, only if full enough. */
    public static SystemPlan of(List<MeasuredBar> bars, int first, BarSigns signs, double room) {
        int last = first + bars.size() - 1;
        double fixed = signs.prefixWidth(first) + signs.warningWidth(last);
        for (int i = first; i <= last; i++) {
            fixed += (i == first ? 0 : signs.startWidth(i))
                    + signs.closing(i, i == last).width();
        }
        double factor = Springs.factor(bars, room - fixed);
        double natural = bars.stream().mapToDouble(MeasuredBar::naturalWidth).sum();
        boolean ragged = signs.endsStretch(last) && natural / (room - fixed) < SystemBreaks.JUSTIFIED_FILL;
        return place(bars, first, signs, ragged ? Math.min(factor, LOOSEST_LAST) : factor);
    }

    private static SystemPlan place(List<MeasuredBar> bars, int first, BarSigns signs, double factor) {
        var spans = new ArrayList<BarSpan>();
        double x = 0;
        for (int i = 0; i < bars.size(); i++) {
            int index = first + i;
            boolean last = i + 1 == bars.size();
            double start = x + (i == 0 ? signs.prefixWidth(index) : signs.startWidth(index));
            double[] columns = new double[bars.get(i).columns().size()];
            double at = start;
            for (int c = 0; c < columns.length; c++) {
                at += Springs.gap(bars.get(i), c, factor);
                columns[c] = at;
            }
            double end = at + Springs.gap(bars.get(i), columns.length, factor);
            var span =
                    new BarSpan(bars.get(i), index, i == 0, last, x, start, columns, end, signs.closing(index, last));
            spans.add(span);
            x = span.right();
        }
        return new SystemPlan(spans, x + signs.warningWidth(first + bars.size() - 1));
    }
}
