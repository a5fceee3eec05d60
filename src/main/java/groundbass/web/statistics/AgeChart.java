package groundbass.web.statistics;

import groundbass.audience.statistics.AtAge;
import groundbass.audience.statistics.LessonAges;
import groundbass.catalog.episode.Episode;
import groundbass.web.statistics.ColumnScale.Part;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Lessons as columns, the latest at the right: what was downloaded on the first day, on top of it what came until a week was
 * over, and until 28 days were.
 *
 * @param top how many downloads the full height stands for
 */
public record AgeChart(long top, List<Column> columns) {
    private static final int FEWEST = 8; // fewer columns would look like doors

    public AgeChart {
        columns = List.copyOf(columns);
    }

    /** A lesson at the ages that it has reached; an age that is empty is still to come. */
    public record Row(Episode episode, Optional<AtAge> day, Optional<AtAge> week, Optional<AtAge> month) {
        static Row of(Episode episode, LessonAges ages, Instant now) {
            return new Row(
                    episode,
                    reached(episode, LessonAges.DAY, now, ages.day()),
                    reached(episode, LessonAges.WEEK, now, ages.week()),
                    reached(episode, LessonAges.MONTH, now, ages.month()));
        }

        private static Optional<AtAge> reached(Episode episode, int hours, Instant now, AtAge taken) {
            return episode.publishedAt()
                    .filter(out -> !out.plus(Duration.ofHours(hours)).isAfter(now))
                    .map(out -> taken);
        }

        /** Downloads up to the highest age that it has reached. */
        public long most() {
            return month.or(() -> week).or(() -> day).map(AtAge::downloads).orElse(0L);
        }
    }

    /** A lesson, from the ground up. */
    public record Column(Row row, int x, Part day, Part week, Part month) {}

    static AgeChart of(List<Row> rows) {
        var scale = ColumnScale.upTo(rows.stream().mapToLong(Row::most).max().orElse(0));
        return new AgeChart(
                scale.top(),
                IntStream.range(0, rows.size())
                        .mapToObj(i -> column(rows.get(i), i * ColumnScale.STEP, scale))
                        .toList());
    }

    private static Column column(Row row, int x, ColumnScale scale) {
        long day = row.day().map(AtAge::downloads).orElse(0L);
        long week = row.week().map(AtAge::downloads).orElse(day);
        long month = row.month().map(AtAge::downloads).orElse(week);
        return new Column(row, x, scale.part(0, day), scale.part(day, week), scale.part(week, month));
    }

    public int width() {
        return Math.max(FEWEST, columns.size()) * ColumnScale.STEP;
    }

    public int height() {
        return ColumnScale.HEIGHT;
    }

    public long half() {
        return top / 2;
    }

    /** The lesson with the most downloads. */
    public Optional<Row> best() {
        return columns.stream().map(Column::row).max(Comparator.comparingLong(Row::most));
    }
}
