package groundbass.store;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicReference;

/** A clock that stands still until a test moves it. */
public final class SettableClock extends Clock {
    private final AtomicReference<Instant> now;

    private SettableClock(Instant now) {
        this.now = new AtomicReference<>(now);
    }

    /** At an instant such as {@code 2026-03-02T10:00:00Z}. */
    public static SettableClock at(String instant) {
        return new SettableClock(Instant.parse(instant));
    }

    public void move(Duration by) {
        now.updateAndGet(instant -> instant.plus(by));
    }

    public void set(String instant) {
        now.set(Instant.parse(instant));
    }

    @Override
    public Instant instant() {
        return now.get();
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.fixed(now.get(), zone);
    }
}
