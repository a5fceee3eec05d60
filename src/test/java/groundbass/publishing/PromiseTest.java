package groundbass.publishing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/** Dates of the clock changes: IANA time zone database, Europe/Berlin 2026 (29 March and 25 October). */
class PromiseTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final Instant NOW = Instant.parse("2026-03-01T00:00:00Z");

    @Test
    void theSameHourIsAnotherInstantInSummer() {
        assertThat(at("2026-03-20T18:00")).isEqualTo("2026-03-20T17:00:00Z");
        assertThat(at("2026-04-20T18:00")).isEqualTo("2026-04-20T16:00:00Z");
    }

    @Test
    void anHourThatComesTwiceMeansTheFirst() {
        assertThat(at("2026-10-25T02:30")).isEqualTo("2026-10-25T00:30:00Z");
    }

    @Test
    void anHourThatNeverComesIsRefused() {
        assertThat(Promise.of(LocalDateTime.parse("2026-03-29T02:30"), BERLIN, NOW)
                        .problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem.key()).isEqualTo("publishing.problem.hour.skipped"));
    }

    @Test
    void anHourThatHasPassedIsRefused() {
        assertThat(Promise.of(LocalDateTime.parse("2026-03-01T01:00"), BERLIN, NOW)
                        .problems())
                .hasSize(1);
    }

    private static String at(String local) {
        return Promise.of(LocalDateTime.parse(local), BERLIN, NOW)
                .result()
                .orElseThrow()
                .at()
                .toString();
    }
}
