package groundbass.audience.rollup;

import groundbass.audience.download.DownloadId;
import groundbass.catalog.series.SeriesId;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;
import org.jdbi.v3.core.statement.Update;

/**
 * The weeks of each series that are over and settled, one after another, in its own zone. Where a series has another zone
 * than its weeks were made in, they are made again. Works in the caller's transaction.
 */
final class SeriesWeeks {
    /** Of the records of one week and one series, those that count. */
    static final String OF_WEEK = "download.id >= :from and download.id < :until and " + Counting.OF_MANY
            + " in (select id from episode where series_id = :series) and " + Counting.COUNTED;

    private static final String SUMS = ":week as week, count(distinct download.student_id) as students, "
            + Counting.BY_STATE + " from download where ";

    static final String WEEK = "select download.episode_id, " + SUMS + OF_WEEK + " group by download.episode_id";

    /** The same of all lessons together: a student of two of them is one. No row where nothing was taken. */
    static final String WEEK_OF_SERIES =
            "select cast(:series as varchar(16)) as series_id, " + SUMS + OF_WEEK + " having count(*) > 0";

    /** When the first lesson of a series was brought out: no week before that is summed up. */
    static final String BEGAN = "(select min(published_at) from episode where episode.series_id = series.id)";

    private static final String ACTIVE =
            "select distinct download.student_id from download where download.student_id is not null and " + OF_WEEK;

    private final Handle handle;
    private final Instant settled;

    /** @param settled until when records are summed up */
    SeriesWeeks(Handle handle, Instant settled) {
        this.handle = handle;
        this.settled = settled;
    }

    /** A series, the zone and the first week that is left; a series of which nothing is out yet has none. */
    record Due(SeriesId series, ZoneId zone, LocalDate week) {
        Instant start() {
            return week.atStartOfDay(zone).toInstant();
        }

        Instant end() {
            return week.plusWeeks(1).atStartOfDay(zone).toInstant();
        }

        Due next() {
            return new Due(series, zone, week.plusWeeks(1));
        }
    }

    /** Sums up one week of one series. @return whether there was one */
    boolean step() {
        Optional<Due> due =
                all().stream().filter(one -> !one.end().isAfter(settled)).findFirst();
        due.ifPresent(this::add);
        return due.isPresent();
    }

    /** Throws away what is summed up of every series. */
    static void clear(Handle handle) {
        handle.execute("delete from taken_week"); // those of lessons that were thrown away too
        all(handle).forEach(series -> forget(handle, series));
    }

    private static List<SeriesId> all(Handle handle) {
        return handle.createQuery("select id from series order by id")
                .mapTo(SeriesId.class)
                .list();
    }

    private List<Due> all() {
        return handle.createQuery("""
                        select series.id, series.zone, taken_series.zone as summed_zone, taken_series.next_week,
                            <began> as began
                        from series left join taken_series on taken_series.series_id = series.id order by series.id""").define("began", BEGAN).mapTo(Row.class).stream()
                .flatMap(row -> due(row).stream())
                .toList();
    }

    private Optional<Due> due(Row row) {
        var summed = row.nextWeek().filter(week -> row.summedZone().equals(Optional.of(row.zone())));
        if (summed.isEmpty() && row.nextWeek().isPresent()) {
            forget(handle, row.id());
        }
        return summed.or(() -> row.began().map(began -> Mondays.of(began, row.zone())))
                .map(week -> new Due(row.id(), row.zone(), week));
    }

    private record Row(
            SeriesId id,
            ZoneId zone,
            Optional<ZoneId> summedZone,
            Optional<LocalDate> nextWeek,
            Optional<Instant> began) {}

    private static void forget(Handle handle, SeriesId series) {
        handle.execute(
                "delete from taken_week where episode_id in (select id from episode where series_id = ?)",
                series.value());
        for (String table :
                List.of("taken_series", "taken_series_week", "taken_cohort", "taken_clock", "taking_student")) {
            handle.execute("delete from " + table + " where series_id = ?", series.value());
        }
    }

    private void add(Due due) {
        bound(
                        due,
                        "insert into taken_week (episode_id, week, students, complete, broken_off, handed_over, running) "
                                + WEEK)
                .execute();
        bound(
                        due,
                        "insert into taken_series_week"
                                + " (series_id, week, students, complete, broken_off, handed_over, running) "
                                + WEEK_OF_SERIES)
                .execute();
        bound(due, """
                insert into taking_student (series_id, student_id, joined, weeks)
                select :series, active.student_id, :week, 0 from (<active>) active
                where not exists (select 1 from taking_student known
                    where known.series_id = :series and known.student_id = active.student_id)""".replace("<active>", ACTIVE)).execute();
        bound(
                        due,
                        "update taking_student set weeks = weeks + 1 where series_id = :series and student_id in ("
                                + ACTIVE + ")")
                .execute();
        // not by a join: H2 would ask for the active students anew for each who ever took something
        bound(due, """
                insert into taken_cohort (series_id, joined, week, students)
                select :series, taking_student.joined, :week, count(*)
                from taking_student
                where taking_student.series_id = :series and taking_student.student_id in (<active>)
                group by taking_student.joined""".replace("<active>", ACTIVE)).execute();
        new SeriesClock(handle).add(due);
        moveTo(due.next());
    }

    private void moveTo(Due due) {
        handle.execute(
                "delete from taken_series where series_id = ?", due.series().value());
        handle.execute(
                "insert into taken_series (series_id, zone, next_week) values (?, ?, ?)",
                due.series().value(),
                due.zone().getId(),
                due.week());
    }

    private Update bound(Due due, String sql) {
        return bind(handle.createUpdate(sql), due);
    }

    /** Binds the series, the week and its first and last ids. */
    static <S extends SqlStatement<S>> S bind(S statement, Due due) {
        return statement
                .bind("series", due.series())
                .bind("week", due.week())
                .bind("from", DownloadId.lowest(due.start()))
                .bind("until", DownloadId.lowest(due.end()));
    }
}
