package groundbass.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicReference;

/** A clock that stands still until it is moved. Thread-safe. */
public final class SettableClock extends Clock {
    private final AtomicReference<Instant> now;
    private final ZoneId zone;

    public SettableClock(Instant now) {
        this(new AtomicReference<>(now), ZoneOffset.UTC);
    }

    private SettableClock(AtomicReference<Instant> now, ZoneId zone) {
        this.now = now;
        this.zone = zone;
    }

    public void set(Instant instant) {
        now.set(instant);
    }

    public void advance(Duration duration) {
        now.updateAndGet(instant -> instant.plus(duration));
    }

    @Override
    public Instant instant() {
        return now.get();
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        return new SettableClock(now, other);
    }
}
