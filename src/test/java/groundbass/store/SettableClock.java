package groundbass.store;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicReference;

/** A clock that stands still until a test moves it. Thread-safe. */
public final class SettableClock extends Clock {
    private final AtomicReference<Instant> now;
    private final ZoneId zone;

    private SettableClock(AtomicReference<Instant> now, ZoneId zone) {
        this.now = now;
        this.zone = zone;
    }

    public static SettableClock at(Instant instant) {
        return new SettableClock(new AtomicReference<>(instant), ZoneOffset.UTC);
    }

    /** At an instant such as {@code 2026-03-02T10:00:00Z}. */
    public static SettableClock at(String instant) {
        return at(Instant.parse(instant));
    }

    public void advance(Duration by) {
        now.updateAndGet(instant -> instant.plus(by));
    }

    public void set(Instant instant) {
        now.set(instant);
    }

    public void set(String instant) {
        set(Instant.parse(instant));
    }

    @Override
    public Instant instant() {
        return now.get();
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    /** The same clock seen from another zone: it moves with this one. */
    @Override
    public Clock withZone(ZoneId other) {
        return new SettableClock(now, other);
    }
}
