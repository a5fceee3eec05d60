package groundbass.web.statistics;

import groundbass.audience.rollup.Mondays;
import groundbass.audience.statistics.DownloadCounts;
import groundbass.audience.statistics.WeekUse;
import groundbass.web.statistics.ColumnScale.Part;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * Weeks as columns, the latest at the right, this week too and weeks without downloads.
 *
 * @param top how many downloads the full height stands for
 */
public record WeekChart(long top, List<Column> columns) {
    private static final int FEWEST = 12; // fewer columns would look like doors
    /** So many weeks at most, up to this one. */
    static final int MOST = 52;

    /** One week: what arrived, what broke off, and on top what nobody saw arrive. */
    public record Column(WeekUse week, int x, Part complete, Part broken, Part unknown) {}

    public WeekChart {
        columns = List.copyOf(columns);
    }

    /** @param today a day of the last week to show */
    static WeekChart of(List<WeekUse> weeks, LocalDate today) {
        var last = Mondays.of(today);
        Map<LocalDate, WeekUse> known = weeks.stream().collect(Collectors.toMap(WeekUse::monday, week -> week));
        var shown = LongStream.range(0, count(weeks, last))
                .mapToObj(last::minusWeeks)
                .map(monday -> known.getOrDefault(monday, new WeekUse(monday, 0, DownloadCounts.NONE)))
                .sorted(Comparator.comparing(WeekUse::monday))
                .toList();
        var scale = ColumnScale.upTo(
                shown.stream().mapToLong(week -> week.downloads().all()).max().orElse(0));
        return new WeekChart(
                scale.top(),
                IntStream.range(0, shown.size())
                        .mapToObj(i -> column(shown.get(i), i * ColumnScale.STEP, scale))
                        .toList());
    }

    private static long count(List<WeekUse> weeks, LocalDate last) {
        long all = weeks.isEmpty() ? 0 : ChronoUnit.WEEKS.between(weeks.get(0).monday(), last) + 1;
        return Math.max(FEWEST, Math.min(MOST, all));
    }

    private static Column column(WeekUse week, int x, ColumnScale scale) {
        var downloads = week.downloads();
        long arrived = downloads.complete();
        long seen = arrived + downloads.brokenOff();
        return new Column(
                week, x, scale.part(0, arrived), scale.part(arrived, seen), scale.part(seen, downloads.all()));
    }

    public int width() {
        return columns.size() * ColumnScale.STEP;
    }

    public int height() {
        return ColumnScale.HEIGHT;
    }

    public long half() {
        return top / 2;
    }

    public LocalDate first() {
        return columns.get(0).week().monday();
    }

    /** This week. */
    public Column latest() {
        return columns.get(columns.size() - 1);
    }

    /** The week with the most downloads, the first of several. */
    public Column best() {
        return Collections.max(
                columns,
                Comparator.comparingLong((Column c) -> c.week().downloads().all()));
    }

    public boolean isEmpty() {
        return best().week().downloads().all() == 0;
    }

    public boolean hasBroken() {
        return columns.stream().anyMatch(column -> column.week().downloads().brokenOff() > 0);
    }

    public boolean hasUnknown() {
        return columns.stream().anyMatch(column -> column.week().downloads().unknown() > 0);
    }

    /** The weeks in which something can have happened, the latest first. */
    public List<WeekUse> sinceTheFirst() {
        var weeks = new ArrayList<>(columns.stream()
                .map(Column::week)
                .dropWhile(week -> week.downloads().all() == 0)
                .toList());
        Collections.reverse(weeks);
        return weeks;
    }
}
