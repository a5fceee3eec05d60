package groundbass.audience.statistics;

import groundbass.audience.rollup.Mondays;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * Some weeks of a calendar, one after another. A week begins on Monday (ISO 8601) at midnight of the zone.
 *
 * @param last the Monday of the last one
 * @param count how many there are
 */
public record Weeks(LocalDate last, int count, ZoneId zone) {
    public Weeks {
        if (last.getDayOfWeek() != DayOfWeek.MONDAY || count < 1) {
            throw new IllegalArgumentException(count + " weeks up to " + last);
        }
    }

    /** So many weeks, the one with this day being the last. */
    public static Weeks until(LocalDate day, int count, ZoneId zone) {
        return new Weeks(Mondays.of(day), count, zone);
    }

    /** The Monday of one of them, counted from 0. */
    LocalDate monday(int place) {
        return last.minusWeeks(count - 1L - place);
    }

    /** When one of them begins. */
    Instant start(int place) {
        return monday(place).atStartOfDay(zone).toInstant();
    }
}
