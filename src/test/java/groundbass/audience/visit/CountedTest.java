package groundbass.audience.visit;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.SECOND;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class CountedTest {
    private static final Instant NOW = Instant.parse("2026-03-02T10:00:00Z");

    /** By hand: five things are kept, of whichever visitors; with a sixth the oldest visitor goes, with their three. */
    @Test
    void whatIsKeptOfAllVisitorsIsBounded() {
        var counted = new Counted(5);
        for (String thing : "one two three".split(" ")) {
            assertThat(counted.isFirst("a", FIRST, thing, NOW)).isTrue();
        }
        assertThat(counted.isFirst("b", FIRST, "one", NOW)).isTrue();
        assertThat(counted.isFirst("b", SECOND, "one", NOW)).isTrue();
        assertThat(counted.isFirst("a", FIRST, "one", NOW)).as("five are kept").isFalse();

        assertThat(counted.isFirst("b", SECOND, "two", NOW)).isTrue();
        assertThat(counted.isFirst("b", FIRST, "one", NOW)).as("three are left").isFalse();
        assertThat(counted.isFirst("a", FIRST, "one", NOW)).as("forgotten").isTrue();
        assertThat(counted.isFirst("a", FIRST, "two", NOW)).isTrue();
        assertThat(counted.isFirst("b", FIRST, "one", NOW)).as("five once more").isFalse();
    }

    /** What is a day old makes room for as much. */
    @Test
    void whatIsForgottenWithTheDayCountsNoMore() {
        var counted = new Counted(2);
        counted.isFirst("a", FIRST, "one", NOW);
        counted.isFirst("a", FIRST, "two", NOW);
        Instant next = NOW.plus(Counted.SAME_VISIT);
        assertThat(counted.isFirst("b", FIRST, "one", next)).isTrue();
        assertThat(counted.isFirst("c", FIRST, "one", next)).isTrue();
        assertThat(counted.isFirst("b", FIRST, "one", next)).isFalse();
        assertThat(counted.isFirst("c", FIRST, "one", next)).isFalse();
    }

    /** Even where one visitor does more than there is room for, and is the oldest. */
    @Test
    void oneVisitorAloneIsBoundedToo() {
        var counted = new Counted(3);
        for (int thing = 0; thing < 10; thing++) {
            assertThat(counted.isFirst("a", FIRST, thing, NOW)).isTrue();
        }
        assertThat(counted.isFirst("a", FIRST, 0, NOW)).as("forgotten").isTrue();
    }
}
