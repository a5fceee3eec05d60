package groundbass.effort;

import com.github.benmanes.caffeine.cache.Ticker;
import java.time.Clock;
import java.util.concurrent.TimeUnit;

/** The clock that everything here is given, as the library that keeps things for a while wants to have it. */
public record ClockTicker(Clock clock) implements Ticker {
    @Override
    public long read() {
        return TimeUnit.MILLISECONDS.toNanos(clock.millis());
    }
}
