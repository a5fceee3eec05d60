package groundbass.audience.visit;

import java.time.Duration;
import java.time.Instant;

/** By which ages visits are kept: day by day for four weeks, then by four weeks each. */
final class Ages {
    private static final int FOUR_WEEKS = 28;

    private Ages() {}

    /** The first day of the span in which an instant lies, counted from when a lesson was brought out; 0 before that. */
    static int at(Instant now, Instant out) {
        int days = Math.toIntExact(Math.max(0, Duration.between(out, now).toDays()));
        return days < FOUR_WEEKS ? days : days - days % FOUR_WEEKS;
    }
}
