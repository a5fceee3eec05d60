package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.SettableClock;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class FirstHourTest {
    private final SettableClock clock = SettableClock.at("2026-03-04T12:00:00Z");

    @Test
    void nothingIsDeletedBeforeItIsOver() {
        var deleted = new AtomicInteger();
        var deleting = new FirstHour(clock).spares(deleted::incrementAndGet);
        clock.advance(Duration.ofMinutes(59));
        deleting.run();
        assertThat(deleted).hasValue(0);
        clock.advance(Duration.ofMinutes(1));
        deleting.run();
        assertThat(deleted).hasValue(1);
    }

    /** A board without a battery may start in another year, and is told the time a moment later. */
    @Test
    void aClockThatWasAheadAtTheStartDeletesNothingWhenItIsSetRight() {
        clock.advance(Duration.ofDays(40));
        var deleted = new AtomicInteger();
        var deleting = new FirstHour(clock).spares(deleted::incrementAndGet);
        clock.advance(Duration.ofDays(-40));
        deleting.run();
        assertThat(deleted).hasValue(0);
        clock.advance(Duration.ofHours(1));
        deleting.run();
        assertThat(deleted).as("it is an hour, and not forty days").hasValue(1);
    }
}
