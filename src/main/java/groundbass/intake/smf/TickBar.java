package groundbass.intake.smf;

import groundbass.score.Fraction;
import groundbass.score.Meter;

/**
 * One bar of a file in ticks.
 *
 * @param start in ticks from the beginning of the file
 * @param length in whole notes, at most that of the metre
 */
record TickBar(Fraction start, Meter meter, Fraction length, int perQuarter) {
    /** Ticks of a time in whole notes. */
    Fraction ticks(Fraction time) {
        return time.times(4L * perQuarter);
    }

    Fraction end() {
        return start.plus(ticks(length));
    }

    /** A time of the bar in ticks from the beginning of the file. */
    Fraction tick(Fraction at) {
        return start.plus(ticks(at));
    }
}
