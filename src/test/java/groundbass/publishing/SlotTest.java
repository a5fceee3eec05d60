package groundbass.publishing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.series.ReleaseRhythm;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class SlotTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

    private static List<Slot> coming(String first, String time, String now) {
        var rhythm = new ReleaseRhythm(LocalDate.parse(first), LocalTime.parse(time), 1, new TreeSet<>());
        return Slot.coming(rhythm, VIENNA, List.of(), Instant.parse(now), 3);
    }

    /** Directive 2000/84/EC: clocks go forward at 01:00 UTC on the last Sunday of March, in 2030 the 31st. */
    @Test
    void anHourThatTheClocksJumpOverIsNoneToPromise() {
        var slots = coming("2030-03-24", "02:30", "2030-03-20T12:00:00Z");
        assertThat(slots).extracting(Slot::exists).containsExactly(true, false, true);
        assertThat(slots).extracting(Slot::isFree).containsExactly(true, false, true);
    }

    /**
     * The same directive: clocks go back at 01:00 UTC on the last Sunday of October, in 2030 the 27th, so that 02:30 comes at
     * 00:30 and at 01:30 UTC. The first is the hour.
     */
    @Test
    void anHourThatComesTwiceHasStruckOnceTheFirstHas() {
        assertThat(coming("2030-10-27", "02:30", "2030-10-27T00:29:00Z").get(0).local())
                .hasToString("2030-10-27T02:30");
        assertThat(coming("2030-10-27", "02:30", "2030-10-27T01:10:00Z"))
                .extracting(slot -> slot.local().toString())
                .containsExactly("2030-11-03T02:30", "2030-11-10T02:30", "2030-11-17T02:30");
    }

    @Test
    void todaysHourComesUntilItHasStruck() {
        assertThat(coming("2030-05-01", "17:00", "2030-05-01T14:59:00Z").get(0).local())
                .hasToString("2030-05-01T17:00");
        assertThat(coming("2030-05-01", "17:00", "2030-05-01T15:00:00Z").get(0).local())
                .hasToString("2030-05-08T17:00");
    }
}
