package groundbass.audience.rollup;

import groundbass.audience.rollup.SeriesWeeks.Due;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/** At which hours of the week a series is used, as clocks in its zone show them. */
final class SeriesClock {
    private static final String BY_HOUR = """
            select cast(floor(extract(epoch from (download.started_at - cast(:start as timestamp with time zone))) / 3600) as integer) as elapsed,
                count(*) as downloads
            from download where
            """ + SeriesWeeks.OF_WEEK + " group by elapsed";

    private final Handle handle;

    SeriesClock(Handle handle) {
        this.handle = handle;
    }

    /** An hour as clocks show it; Monday is 1. */
    record LocalHour(int weekday, int hour) implements Comparable<LocalHour> {
        static LocalHour of(ZonedDateTime at) {
            return new LocalHour(at.getDayOfWeek().getValue(), at.getHour());
        }

        @Override
        public int compareTo(LocalHour that) {
            return weekday == that.weekday ? Integer.compare(hour, that.hour) : Integer.compare(weekday, that.weekday);
        }
    }

    private record Elapsed(int elapsed, long downloads) {}

    void add(Due due) {
        of(due).forEach((hour, downloads) -> add(due, hour, downloads));
    }

    /** A week has 167 hours or 169 where clocks are changed: an hour that comes twice has the downloads of both. */
    Map<LocalHour, Long> of(Due due) {
        var hours = new TreeMap<LocalHour, Long>();
        SeriesWeeks.bind(handle.createQuery(BY_HOUR), due)
                .bind("start", due.start())
                .mapTo(Elapsed.class)
                .forEach(row -> hours.merge(
                        LocalHour.of(due.start().atZone(due.zone()).plusHours(row.elapsed())),
                        row.downloads(),
                        Long::sum));
        return hours;
    }

    private void add(Due due, LocalHour hour, long downloads) {
        int known = handle.execute(
                "update taken_clock set downloads = downloads + ? where series_id = ? and weekday = ? and local_hour = ?",
                downloads,
                due.series().value(),
                hour.weekday(),
                hour.hour());
        if (known == 0) {
            handle.execute(
                    "insert into taken_clock (series_id, weekday, local_hour, downloads) values (?, ?, ?, ?)",
                    due.series().value(),
                    hour.weekday(),
                    hour.hour(),
                    downloads);
        }
    }
}
