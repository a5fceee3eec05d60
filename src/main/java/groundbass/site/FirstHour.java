package groundbass.site;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/**
 * The first hour of a server, in which what people made is not deleted for good: a site that was started by mistake is
 * stopped again before its end, and a machine that starts with a wrong clock has been set right. Where the clock goes back
 * behind the start, the hour begins anew.
 */
final class FirstHour {
    private static final Duration LENGTH = Duration.ofHours(1);

    private final Clock clock;
    private Instant started;

    FirstHour(Clock clock) {
        this.clock = clock;
        started = clock.instant();
    }

    /** The same work, which does nothing before the hour is over. */
    Runnable spares(Runnable deleting) {
        return () -> {
            if (isOver()) {
                deleting.run();
            }
        };
    }

    private synchronized boolean isOver() {
        var now = clock.instant();
        if (now.isBefore(started)) {
            started = now;
        }
        return !now.isBefore(started.plus(LENGTH));
    }
}
