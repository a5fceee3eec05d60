package groundbass.site;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.concurrent.atomic.AtomicReference;

/** A clock that goes as the machine's does, since the scheduler waits by it, and can be moved on. Thread-safe. */
final class YearsClock extends Clock {
    private final Clock machine;
    private final AtomicReference<Duration> ahead;

    private YearsClock(Clock machine, AtomicReference<Duration> ahead) {
        this.machine = machine;
        this.ahead = ahead;
    }

    /** Ahead of the machine's by so much. */
    static YearsClock ahead(Duration by) {
        return new YearsClock(Clock.systemUTC(), new AtomicReference<>(by));
    }

    void advance(Duration by) {
        ahead.updateAndGet(before -> before.plus(by));
    }

    @Override
    public Instant instant() {
        return machine.instant().plus(ahead.get());
    }

    @Override
    public ZoneId getZone() {
        return machine.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new YearsClock(machine.withZone(zone), ahead);
    }
}
