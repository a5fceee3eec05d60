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
 * @param factor by which its gaps are stretched
 */
public record SystemPlan(List<BarSpan> bars, double width, double factor) {
    private static final double LOOSEST_LAST = 1.35;

    /** So little more is needed to reach the margin after all. */
    private static final double NEARLY = 1.12;

    /** How full a last system must be to be justified (rule: last-system-ragged). */
    private static final double JUSTIFIED_FILL = 0.68;

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

    /**
     * Justifies the bars from {@code first} on; the last system of a line only if it is full enough, else it is as wide
     * as the one before it.
     *
     * @param before the factor of the system before it
     */
    public static SystemPlan of(List<MeasuredBar> measured, int first, BarSigns signs, double room, double before) {
        int last = first + measured.size() - 1;
        double fixed = signs.prefixWidth(first) + signs.warningWidth(last);
        for (int i = first; i <= last; i++) {
            fixed += (i == first ? 0 : signs.startWidth(i))
                    + signs.closing(i, i == last).width();
        }
        var bars = Evening.of(measured, room - fixed);
        double factor = Springs.factor(bars, room - fixed);
        double natural = bars.stream().mapToDouble(MeasuredBar::naturalWidth).sum();
        double most = Math.max(LOOSEST_LAST, before);
        boolean ragged =
                last + 1 == signs.size() && natural / (room - fixed) < JUSTIFIED_FILL && factor > most * NEARLY;
        return place(bars, first, signs, ragged ? most : factor);
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
        return new SystemPlan(spans, x + signs.warningWidth(first + bars.size() - 1), factor);
    }
}
