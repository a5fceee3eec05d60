package groundbass.effort;

import io.github.bucket4j.TimeMeter;
import java.time.Clock;
import java.util.concurrent.TimeUnit;

/** The clock that everything here is given, as the library that counts wants to have it. */
public record ClockMeter(Clock clock) implements TimeMeter {
    @Override
    public long currentTimeNanos() {
        return TimeUnit.MILLISECONDS.toNanos(clock.millis());
    }

    @Override
    public boolean isWallClockBased() {
        return true;
    }
}
