package groundbass.intake.smf;

import groundbass.score.Fraction;
import java.util.List;
import java.util.TreeMap;

/** Which bar of a file a tick lies in. */
final class BarIndex {
    /** Of a quarter: what comes this near to a bar line is meant to stand at it (common practice, no source). */
    private static final int SLACK = 8;

    private final List<TickBar> bars;
    private final TreeMap<Long, Integer> byStart = new TreeMap<>();

    BarIndex(List<TickBar> bars) {
        this.bars = bars;
        for (int i = 0; i < bars.size(); i++) {
            byStart.put(-bars.get(i).start().negated().floor(), i);
        }
    }

    /** The first bar for what lies before it, the last one for what lies behind. */
    int of(long tick) {
        var bar = byStart.floorEntry(tick);
        return bar == null ? 0 : bar.getValue();
    }

    /** The bar that has begun, or begins at once. */
    int at(long tick) {
        return of(tick + slack());
    }

    /** Whether a tick lies inside a bar, rather than at one of its ends, before all bars or behind them. */
    boolean isInside(long tick) {
        var start = bars.get(at(tick)).start().plus(Fraction.of(slack()));
        return Fraction.of(tick).isAfter(start) && !isBehind(tick);
    }

    boolean isBefore(long tick) {
        return Fraction.of(tick + slack()).isBefore(bars.get(0).start());
    }

    boolean isBehind(long tick) {
        return !Fraction.of(tick).isBefore(bars.get(bars.size() - 1).end());
    }

    /** The bar that begins at the nearest bar line; one behind the last where that is the last line. */
    int nearest(long tick) {
        int bar = of(tick);
        var twice = Fraction.of(tick).times(2);
        var middle = bars.get(bar).start().plus(bars.get(bar).end());
        return twice.isBefore(middle) ? bar : bar + 1;
    }

    private long slack() {
        return bars.get(0).perQuarter() / SLACK;
    }
}
