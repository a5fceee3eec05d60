package groundbass.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.SettableClock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class BudgetTest {
    private final SettableClock clock = SettableClock.at(Instant.parse("2026-02-02T09:00:00Z"));
    private final AtomicLong processor = new AtomicLong();
    private final Budget budget = new Budget(
            new ConcurrencyLimit(1, 0, Duration.ZERO),
            1,
            Duration.ofSeconds(10),
            Duration.ofSeconds(100),
            clock,
            processor::get);

    @Test
    void workIsPaidByTheProcessorTimeThatItTook() {
        spend("ada", 4);
        spend("ada", 4);
        spend("ada", 8); // there was time left, so it may begin; six seconds are owed
        assertThatThrownBy(() -> spend("ada", 1)).isInstanceOfSatisfying(Busy.class, busy -> assertThat(busy.howLong())
                .isBetween(Duration.ofSeconds(60), Duration.ofSeconds(61)));
    }

    @Test
    void aSpentBudgetComesBackWithTime() {
        spend("ada", 15);
        assertThatThrownBy(() -> spend("ada", 1)).isInstanceOf(Busy.class);
        clock.advance(Duration.ofSeconds(51));
        assertThat(spend("ada", 0)).isEqualTo("done");
    }

    @Test
    void oneSpendsNothingOfAnother() {
        spend("ada", 30);
        assertThat(spend("ben", 1)).isEqualTo("done");
    }

    @Test
    void aFaultCostsWhatItTook() {
        assertThatThrownBy(() -> budget.spend("ada", () -> {
                    use(20);
                    throw new IllegalStateException("a fault");
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> spend("ada", 1)).isInstanceOf(Busy.class);
    }

    private String spend(String who, int seconds) {
        return budget.spend(who, () -> {
            use(seconds);
            return "done";
        });
    }

    private void use(int seconds) {
        processor.addAndGet(TimeUnit.SECONDS.toNanos(seconds));
    }
}
