package groundbass.performance;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import java.util.Objects;

/**
 * One playing of one written bar.
 *
 * @param pass which pass through its repeated stretch this is, from 1
 * @param round which time through the whole line this is, from 1
 * @param start when its first moment comes, from the start of the count-in, in whole notes
 */
public record TimedBar(Bar bar, InForce inForce, int pass, int round, Fraction start) {
    public TimedBar {
        Objects.requireNonNull(bar);
        Objects.requireNonNull(inForce);
        Objects.requireNonNull(start);
    }

    public int number() {
        return inForce.number();
    }

    public Fraction end() {
        return start.plus(bar.length());
    }

    /** When a time counted from the bar's first count comes, before swing; a pickup's first count lies before it. */
    public Fraction moment(Fraction offset) {
        return start.minus(bar.from()).plus(offset);
    }

    /** The time from the bar's first count at this moment. */
    public Fraction offset(Fraction moment) {
        return moment.minus(start).plus(bar.from());
    }
}
