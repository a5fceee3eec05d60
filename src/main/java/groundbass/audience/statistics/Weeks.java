package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.student.StudentId;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Puts downloads into the weeks of a calendar. A week begins on Monday (ISO 8601) at midnight of the zone. */
final class Weeks {
    private Weeks() {}

    static List<WeekUse> of(Stream<Download> downloads, ZoneId zone) {
        var weeks = new TreeMap<LocalDate, Week>();
        downloads.forEach(download -> weeks.computeIfAbsent(monday(download.startedAt(), zone), day -> new Week())
                .add(download));
        if (weeks.isEmpty()) return List.of();
        return Stream.iterate(weeks.firstKey(), day -> !day.isAfter(weeks.lastKey()), day -> day.plusWeeks(1))
                .map(day -> weeks.getOrDefault(day, new Week()).use(day))
                .toList();
    }

    private static LocalDate monday(Instant instant, ZoneId zone) {
        return instant.atZone(zone).toLocalDate().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private static final class Week {
        private final Set<StudentId> students = new HashSet<>();
        private DownloadCounts counts = DownloadCounts.NONE;

        void add(Download download) {
            download.student().ifPresent(students::add);
            counts = counts.plus(DownloadCounts.of(download.state(), 1));
        }

        WeekUse use(LocalDate monday) {
            return new WeekUse(monday, students.size(), counts);
        }
    }
}
