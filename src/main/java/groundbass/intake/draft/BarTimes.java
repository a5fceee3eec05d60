package groundbass.intake.draft;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Where the bars of a draft lie in time. */
final class BarTimes {
    private final List<Bar> bars;
    private final List<Fraction> starts = new ArrayList<>();
    private final List<Meter> meters = new ArrayList<>();
    private final Fraction end;

    BarTimes(Header header, List<Bar> bars) {
        this.bars = bars;
        var at = Fraction.ZERO;
        var meter = header.meter();
        for (var bar : bars) {
            meter = bar.changes().meter().orElse(meter);
            starts.add(at);
            meters.add(meter);
            at = at.plus(bar.length());
        }
        this.end = at;
    }

    /** Where the last bar ends. */
    Fraction end() {
        return end;
    }

    Meter meter(int bar) {
        return meters.get(bar);
    }

    Fraction endOf(int bar) {
        return starts.get(bar).plus(bars.get(bar).length());
    }

    /** The index of the bar that a moment lies in; the last one for what lies behind it. */
    int barOf(Fraction moment) {
        int found = Collections.binarySearch(starts, moment);
        return found >= 0 ? found : Math.max(0, -found - 2);
    }

    /** A moment as its bar counts it. */
    Fraction within(int bar, Fraction moment) {
        return moment.minus(starts.get(bar)).plus(bars.get(bar).from());
    }

    /** A time of a bar as a moment of the draft. */
    Fraction moment(int bar, Fraction at) {
        return starts.get(bar).plus(at).minus(bars.get(bar).from());
    }
}
