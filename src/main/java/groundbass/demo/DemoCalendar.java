package groundbass.demo;

import java.time.Duration;
import java.time.Instant;

/**
 * The weeks that seed data counts back from the moment of loading. This week, number 0, began some days ago, so that what
 * came out in it has been found by somebody.
 */
final class DemoCalendar {
    private static final Duration WEEK = Duration.ofDays(7);
    private static final Duration OF_THIS_WEEK = Duration.ofDays(3);

    private DemoCalendar() {}

    /** When the week began that lies so many weeks back. */
    static Instant week(Instant now, int weeksAgo) {
        return now.minus(OF_THIS_WEEK).minus(WEEK.multipliedBy(weeksAgo));
    }
}
