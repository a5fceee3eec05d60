package groundbass.audience.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class TriesTest {
    private static final int TIMES = 10;
    private static final Duration PERIOD = Duration.ofMinutes(15);

    private final SettableClock clock = SettableClock.at(Instant.parse("2026-02-02T09:00:00Z"));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void twoNodesCountTogetherAndTimeGivesBack(Database database) {
        try (database) {
            var one = new Tries(database.jdbi(), clock);
            var other = new Tries(database.jdbi(), clock);
            for (int i = 0; i < TIMES; i++) {
                assertThat((i % 2 == 0 ? one : other).take("ada", TIMES, PERIOD))
                        .isEmpty();
            }
            assertThat(one.take("ada", TIMES, PERIOD)).contains(Duration.ofSeconds(90));
            assertThat(other.take("ada", TIMES, PERIOD)).isPresent();
            assertThat(other.take("ben", TIMES, PERIOD)).isEmpty();
            clock.advance(Duration.ofSeconds(89));
            assertThat(one.take("ada", TIMES, PERIOD)).contains(Duration.ofSeconds(1));
            clock.advance(Duration.ofSeconds(1));
            assertThat(one.take("ada", TIMES, PERIOD)).isEmpty();
            assertThat(one.take("ada", TIMES, PERIOD)).isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void triesAtOnceAreAllCounted(Database database) {
        try (database) {
            var tries = new Tries(database.jdbi(), clock);
            var all = new ArrayList<CompletableFuture<Boolean>>();
            for (int i = 0; i < 30; i++) {
                all.add(CompletableFuture.supplyAsync(
                        () -> tries.take("ada", TIMES, PERIOD).isEmpty()));
            }
            assertThat(all.stream().filter(CompletableFuture::join).count()).isEqualTo(TIMES);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatSaysNothingAnyMoreIsCleared(Database database) {
        try (database) {
            var tries = new Tries(database.jdbi(), clock);
            tries.take("ada", TIMES, PERIOD);
            assertThat(tries.purge()).isZero();
            clock.advance(PERIOD);
            assertThat(tries.purge()).isOne();
        }
    }
}
