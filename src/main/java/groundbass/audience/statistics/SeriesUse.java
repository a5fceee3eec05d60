package groundbass.audience.statistics;

import groundbass.catalog.series.SeriesId;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** How a series is used, by weeks that are over and summed up. Reads no record. */
public final class SeriesUse {
    private final Jdbi jdbi;

    public SeriesUse(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    private record Cell(LocalDate joined, LocalDate week, long students) {}

    /** The last cohorts, the earliest first; a week in which nobody began has none. */
    public List<Cohort> cohorts(SeriesId series, int most) {
        return jdbi.withHandle(handle -> {
            var last = lastWeek(handle, series);
            return last.isEmpty() ? List.of() : cohorts(handle, series, last.get(), most);
        });
    }

    private static Optional<LocalDate> lastWeek(Handle handle, SeriesId series) {
        return handle.createQuery("select next_week from taken_series where series_id = :series")
                .bind("series", series)
                .mapTo(LocalDate.class)
                .findOne()
                .map(next -> next.minusWeeks(1));
    }

    private static List<Cohort> cohorts(Handle handle, SeriesId series, LocalDate last, int most) {
        var cells = handle.createQuery("""
                        select joined, week, sum(students) as students from (
                            select joined, week, students from taken_cohort where series_id = :series
                            union all select joined, week, students from taken_departed where subject = :series) both_kinds
                        where joined > :after and week <= :last group by joined, week""")
                .bind("series", series)
                .bind("after", last.minusWeeks(most))
                .bind("last", last)
                .mapTo(Cell.class)
                .list();
        var rows = cells.stream().collect(Collectors.groupingBy(Cell::joined, TreeMap::new, Collectors.toList()));
        return rows.entrySet().stream()
                .map(row -> cohort(row.getKey(), row.getValue(), last))
                .toList();
    }

    private static Cohort cohort(LocalDate joined, List<Cell> cells, LocalDate last) {
        Map<LocalDate, Long> students = cells.stream().collect(Collectors.toMap(Cell::week, Cell::students));
        return new Cohort(
                joined,
                LongStream.rangeClosed(0, ChronoUnit.WEEKS.between(joined, last))
                        .mapToObj(after -> students.getOrDefault(joined.plusWeeks(after), 0L))
                        .toList());
    }

    /** How many students with an account took something in so many different weeks at least, for each of the numbers. */
    public List<Long> staying(SeriesId series, List<Integer> weeks) {
        return jdbi.withHandle(handle -> weeks.stream()
                .map(least -> handle.createQuery(
                                "select count(*) from taking_student where series_id = :series and weeks >= :least")
                        .bind("series", series)
                        .bind("least", least)
                        .mapTo(Long.class)
                        .one())
                .toList());
    }

    /** The hours of the week in which anything was taken, in their order. */
    public List<HourUse> clock(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select weekday, local_hour, downloads from taken_clock
                        where series_id = :series order by weekday, local_hour""")
                .bind("series", series)
                .mapTo(HourUse.class)
                .list());
    }
}
