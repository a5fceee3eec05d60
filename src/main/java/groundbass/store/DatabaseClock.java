package groundbass.store;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** The present as the databases keep it, so that a value just made equals the same value read back. */
public final class DatabaseClock {
    private DatabaseClock() {}

    public static Instant of(Clock clock) {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
