package groundbass.audience.statistics;

import groundbass.audience.download.DownloadId;
import groundbass.audience.rollup.Counting;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.statement.Query;

/** The SQL that sums records up by week. */
final class WeekRows {
    /** The weeks come along as rows of their own, so that each reads its part of the downloads by their ids. */
    private static final String BY_WEEK = """
            select week.place, count(distinct download.student_id) as students,
                <states>
            from (values <weeks>) as week (place, starts, ends)
            join download on download.id >= week.starts and download.id < week.ends
            where <which> and <counted>
            group by week.place order by week.place""";

    private WeekRows() {}

    /**
     * Those of the weeks in which something was taken.
     *
     * @param first none before this one; all where it is empty
     */
    static List<WeekUse> of(Handle handle, StatisticsScope scope, Weeks weeks, Optional<LocalDate> first) {
        var places = IntStream.range(0, weeks.count())
                .filter(place -> first.filter(weeks.monday(place)::isBefore).isEmpty())
                .toArray();
        if (places.length == 0) return List.of();
        Query query = handle.createQuery(BY_WEEK)
                .define("weeks", rows(places))
                .define("states", Counting.BY_STATE)
                .define("counted", Counting.COUNTED)
                .define("which", scope.condition())
                .bind("subject", scope.subject());
        for (int place : places) {
            query.bind("start" + place, DownloadId.lowest(weeks.start(place)))
                    .bind("end" + place, DownloadId.lowest(weeks.start(place + 1)));
        }
        return query.mapTo(Row.class).map(row -> row.use(weeks)).list();
    }

    private static String rows(int... places) {
        return IntStream.of(places)
                .mapToObj(place ->
                        "(" + place + ", cast(:start" + place + " as varchar), cast(:end" + place + " as varchar))")
                .collect(Collectors.joining(", "));
    }

    private record Row(int place, long students, @Nested DownloadCounts downloads) {
        WeekUse use(Weeks weeks) {
            return new WeekUse(weeks.monday(place), students, downloads);
        }
    }
}
