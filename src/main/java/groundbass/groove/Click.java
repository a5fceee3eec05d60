package groundbass.groove;

import groundbass.score.Fraction;
import java.util.Objects;

/**
 * One click on the timeline of a performance.
 *
 * @param countIn whether it comes before the first whole bar
 */
public record Click(Fraction at, double seconds, Weight weight, boolean countIn) {
    /** How much a click stands out. */
    public enum Weight {
        /** The first of a bar. */
        BAR,
        /** The first of a beat or group. */
        BEAT,
        /** A count inside its group, as in 7/8. */
        COUNT
    }

    public Click {
        Objects.requireNonNull(at);
        Objects.requireNonNull(weight);
    }

    /** Whether it marks the first beat of a bar. */
    public boolean first() {
        return weight == Weight.BAR;
    }
}
