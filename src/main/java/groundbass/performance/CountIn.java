package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.Objects;

/** The empty bars before the first whole bar; a pickup sounds inside them. */
public record CountIn(Meter meter, int bars) {
    /** Above so many quarters a minute one bar is too short to catch the tempo (rule: count-in). */
    private static final Fraction QUICK = Fraction.of(140);

    public CountIn {
        Objects.requireNonNull(meter);
        if (bars < 1) {
            throw new IllegalArgumentException("a count-in has at least one bar: " + bars);
        }
    }

    static CountIn of(Meter meter, Fraction quartersPerMinute) {
        return new CountIn(meter, quartersPerMinute.isAfter(QUICK) ? 2 : 1);
    }

    public Fraction length() {
        return meter.length().times(bars);
    }
}
