package groundbass.script.checking;

import groundbass.score.Count;
import groundbass.score.Fraction;

/** Moments as players say them. */
public final class Counts {
    private Counts() {}

    /** {@code 2&}; inside a tuplet, the count before it. */
    public static String of(Timeline timeline, int bar, Fraction at) {
        var meter = timeline.at(bar).meter();
        var quarter = meter.count().dividedBy(4);
        var known = at.minus(at.modulo(quarter));
        return Count.at(known, meter).map(Count::toString).orElse("1");
    }
}
