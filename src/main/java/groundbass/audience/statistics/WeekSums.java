package groundbass.audience.statistics;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.Nested;

/** What is known of weeks without reading records. */
final class WeekSums {
    private static final String COUNTS = """
            select week, students, complete, broken_off, handed_over, running from <table>
            where <column> = :subject and week >= :first and week < :end""";

    private static final String DEPARTED = """
            select week, sum(students) as students from taken_departed
            where subject = :subject and week >= :first and week < :end group by week""";

    private final Handle handle;
    private final StatisticsScope scope;
    private final Weeks weeks;

    WeekSums(Handle handle, StatisticsScope scope, Weeks weeks) {
        this.handle = handle;
        this.scope = scope;
        this.weeks = weeks;
    }

    /** The first week that is not summed up; empty where none is, or where the sums were made for another zone. */
    Optional<LocalDate> next() {
        String series = scope instanceof StatisticsScope.OfSeries
                ? ":subject"
                : "(select series_id from episode where id = :subject)";
        return handle.createQuery("select next_week from taken_series where zone = :zone and series_id = " + series)
                .bind("zone", weeks.zone())
                .bind("subject", scope.subject())
                .mapTo(LocalDate.class)
                .findOne();
    }

    /** Those before a week in which something was taken; without the students who have left. */
    List<WeekUse> before(LocalDate end) {
        boolean series = scope instanceof StatisticsScope.OfSeries;
        return handle.createQuery(COUNTS)
                .define("table", series ? "taken_series_week" : "taken_week")
                .define("column", series ? "series_id" : "episode_id")
                .bind("subject", scope.subject())
                .bind("first", weeks.monday(0))
                .bind("end", end)
                .mapTo(Row.class)
                .map(Row::use)
                .list();
    }

    /** Students who have left since, by the week in which they took something. */
    Map<LocalDate, Long> departed() {
        var numbers = new HashMap<LocalDate, Long>();
        handle.createQuery(DEPARTED)
                .bind("subject", scope.subject())
                .bind("first", weeks.monday(0))
                .bind("end", weeks.last().plusWeeks(1))
                .mapTo(Number.class)
                .forEach(row -> numbers.put(row.week(), row.students()));
        return numbers;
    }

    private record Number(LocalDate week, long students) {}

    private record Row(
            LocalDate week, long students, @Nested DownloadCounts downloads) {
        WeekUse use() {
            return new WeekUse(week, students, downloads);
        }
    }
}
