package groundbass.site;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/**
 * The first hour of a server, in which nothing is deleted for good: a site that was started by mistake is stopped again
 * before its end, and a machine that starts with a wrong clock has been set right.
 */
final class FirstHour {
    private static final Duration LENGTH = Duration.ofHours(1);

    private final Clock clock;
    private final Instant over;

    FirstHour(Clock clock) {
        this.clock = clock;
        over = clock.instant().plus(LENGTH);
    }

    /** The same work, which does nothing before the hour is over. */
    Runnable spares(Runnable deleting) {
        return () -> {
            if (!clock.instant().isBefore(over)) {
                deleting.run();
            }
        };
    }
}
