package groundbass.audience.rollup;

import groundbass.audience.download.DownloadId;
import groundbass.audience.rollup.Recount.Taken;
import groundbass.audience.rollup.SeriesWeeks.Due;
import groundbass.catalog.series.SeriesId;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/**
 * Counts what is summed up once more from the records. The sums of lessons are counted by the SQL that made them, over all
 * records at once and not in steps; cohorts and hours of the week in another way than they were made.
 */
final class Proof {
    /** Records that are fetched at once. */
    private static final int AT_ONCE = 10_000;

    private final Handle handle;
    private final List<String> differences = new ArrayList<>();

    Proof(Handle handle) {
        this.handle = handle;
    }

    List<String> differences() {
        sums("taken_file", "file_name", LessonSums.FILES);
        sums("taken_hour", "age", LessonSums.HOURS);
        handle.createQuery("select series.id as series, taken_series.zone, taken_series.next_week, "
                        + SeriesWeeks.BEGAN
                        + " as began from taken_series" + " join series on series.id = taken_series.series_id")
                .mapTo(Summed.class)
                .forEach(this::series);
        return differences;
    }

    private record Summed(SeriesId series, ZoneId zone, LocalDate nextWeek, Instant began) {
        LocalDate first() {
            return Mondays.of(began, zone);
        }

        String firstId(LocalDate week) {
            return DownloadId.lowest(week.atStartOfDay(zone).toInstant());
        }
    }

    private void sums(String table, String part, String counted) {
        String columns = "episode_id, " + part + ", " + TakenSums.NAMES;
        String kept = "select " + columns + " from " + table;
        long rows = handle.createQuery("select count(*) from ((" + counted + " except " + kept + ") union all (" + kept
                        + " except " + counted + ")) odd")
                .bind("from", DownloadId.lowest(Instant.EPOCH))
                .bind("until", Watermark.of(handle))
                .mapTo(Long.class)
                .one();
        tell(table, rows);
    }

    private void tell(String table, long rows) {
        if (rows > 0) {
            differences.add(table + ": " + rows + " rows differ from the records");
        }
    }

    private void series(Summed summed) {
        var recount = new Recount(summed.zone());
        records(summed, recount);
        compare("taken_cohort", summed, recount.cohorts(), """
                select cast(joined as varchar) as part, cast(week as varchar) as piece, students as number
                from taken_cohort where series_id = :series and students > 0""");
        compare("taken_clock", summed, recount.clock(), """
                select cast(weekday as varchar) as part, cast(local_hour as varchar) as piece, downloads as number
                from taken_clock where series_id = :series""");
        compare("taking_student", summed, recount.students(), """
                select student_id as part, cast(joined as varchar) as piece, weeks as number
                from taking_student where series_id = :series""");
        weeks(summed);
    }

    private void records(Summed summed, Recount recount) {
        handle.createQuery("""
                        select download.student_id as student, download.started_at from download
                        where <records>""")
                .define("records", SeriesWeeks.OF_WEEK)
                .bind("series", summed.series())
                .bind("from", summed.firstId(summed.first()))
                .bind("until", summed.firstId(summed.nextWeek()))
                .setFetchSize(AT_ONCE)
                .mapTo(Taken.class)
                .forEach(recount::add);
    }

    /** Of any table, in the form that a {@link Recount} gives. */
    private record Row(String part, String piece, long number) {
        String text() {
            return part + " " + piece + " " + number;
        }
    }

    private void compare(String table, Summed summed, Set<String> counted, String kept) {
        var rows = new HashSet<>(handle.createQuery(kept)
                .bind("series", summed.series())
                .mapTo(Row.class)
                .map(Row::text)
                .list());
        long missing = counted.stream().filter(row -> !rows.remove(row)).count();
        tell(table + " of series " + summed.series(), missing + rows.size());
    }

    private void weeks(Summed summed) {
        long lessons = 0;
        long series = 0;
        for (var due = new Due(summed.series(), summed.zone(), summed.first());
                due.week().isBefore(summed.nextWeek());
                due = due.next()) {
            lessons += odd(due, SeriesWeeks.WEEK, """
                    select episode_id, week, students, complete, broken_off, handed_over, running from taken_week
                    where week = :week and episode_id in (select id from episode where series_id = :series)""");
            series += odd(due, SeriesWeeks.WEEK_OF_SERIES, """
                    select series_id, week, students, complete, broken_off, handed_over, running from taken_series_week
                    where week = :week and series_id = :series""");
        }
        tell("taken_week of series " + summed.series(), lessons);
        tell("taken_series_week of series " + summed.series(), series);
    }

    private long odd(Due due, String counted, String kept) {
        String sql = "select count(*) from ((" + counted + " except " + kept + ") union all (" + kept + " except "
                + counted + ")) odd";
        return SeriesWeeks.bind(handle.createQuery(sql), due).mapTo(Long.class).one();
    }
}
