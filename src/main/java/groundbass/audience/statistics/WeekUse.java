package groundbass.audience.statistics;

import java.time.LocalDate;

/** One week, from its Monday (ISO 8601) as the educator's calendar has it. */
public record WeekUse(LocalDate monday, long students, DownloadCounts downloads) {
    WeekUse withMore(long students) {
        return new WeekUse(monday, this.students + students, downloads);
    }
}
