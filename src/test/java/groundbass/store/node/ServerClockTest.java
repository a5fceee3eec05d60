package groundbass.store.node;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ServerClockTest {
    private static final Instant NOON = Instant.parse("2030-03-01T12:00:00Z");

    private final SettableClock machine = SettableClock.at(NOON);
    private final ServerClock clock = new ServerClock(machine);

    @Test
    void itGoesAsTheServersClockWhereTheMachinesIsWrong() {
        clock.set(NOON, NOON.plusSeconds(90), NOON);
        assertThat(clock.instant()).isEqualTo(NOON.plusSeconds(90));
        machine.advance(Duration.ofSeconds(10));
        assertThat(clock.instant()).isEqualTo(NOON.plusSeconds(100));
        machine.set(NOON.plusSeconds(1000)); // somebody sets it
        clock.set(NOON.plusSeconds(1000), NOON.plusSeconds(110), NOON.plusSeconds(1000));
        assertThat(clock.instant()).isEqualTo(NOON.plusSeconds(110));
    }

    @Test
    void anAnswerThatTookItsTimeMovesNothingThatItCannotTell() {
        clock.set(NOON, NOON.plusMillis(10), NOON.plusMillis(300));
        assertThat(clock.instant()).isEqualTo(NOON);
        clock.set(NOON, NOON.plusMillis(500), NOON.plusMillis(300));
        assertThat(clock.instant()).as("in the middle of what may be").isEqualTo(NOON.plusMillis(350));
    }

    @Test
    void twoMachinesAgreeByOneServer() {
        try (var database = Database.open(BothDatabases.migratedPostgresUrl(), "postgres", "")) {
            var fast = new ServerClock(Clock.offset(Clock.systemUTC(), Duration.ofHours(3)));
            var slow = new ServerClock(Clock.offset(Clock.systemUTC(), Duration.ofDays(-2)));
            fast.set(database);
            slow.set(database);
            assertThat(Duration.between(slow.instant(), fast.instant()).abs()).isLessThan(Duration.ofMinutes(1));
        }
    }
}
