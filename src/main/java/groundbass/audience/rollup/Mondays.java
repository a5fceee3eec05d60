package groundbass.audience.rollup;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;

/** The day by which a week is known: its Monday (ISO 8601). */
public final class Mondays {
    private Mondays() {}

    /** Of the week in which a day lies. */
    public static LocalDate of(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    static LocalDate of(Instant at, ZoneId zone) {
        return of(LocalDate.ofInstant(at, zone));
    }
}
