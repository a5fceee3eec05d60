package groundbass.audience.rollup;

import groundbass.audience.rollup.SeriesClock.LocalHour;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Counts the records of one series one by one, for the {@link Proof}; what it finds has the form of the tables' rows. */
final class Recount {
    private final ZoneId zone;
    private final Map<String, TreeSet<LocalDate>> weeks = new HashMap<>();
    private final Map<LocalHour, Long> hours = new TreeMap<>();

    Recount(ZoneId zone) {
        this.zone = zone;
    }

    /** A record that counts; by nobody known where there is no student. */
    record Taken(Optional<String> student, Instant startedAt) {}

    void add(Taken taken) {
        var week = Mondays.of(taken.startedAt(), zone);
        taken.student().ifPresent(student -> weeks.computeIfAbsent(student, key -> new TreeSet<>())
                .add(week));
        hours.merge(LocalHour.of(taken.startedAt().atZone(zone)), 1L, Long::sum);
    }

    Set<String> cohorts() {
        var counted = new TreeMap<String, Integer>();
        weeks.values().forEach(all -> all.forEach(week -> counted.merge(all.first() + " " + week, 1, Integer::sum)));
        return rows(counted);
    }

    Set<String> clock() {
        return hours.entrySet().stream()
                .map(hour -> hour.getKey().weekday() + " " + hour.getKey().hour() + " " + hour.getValue())
                .collect(Collectors.toSet());
    }

    Set<String> students() {
        return weeks.entrySet().stream()
                .map(student -> student.getKey() + " " + student.getValue().first() + " "
                        + student.getValue().size())
                .collect(Collectors.toSet());
    }

    private static Set<String> rows(Map<String, Integer> counted) {
        return counted.entrySet().stream()
                .map(row -> row.getKey() + " " + row.getValue())
                .collect(Collectors.toSet());
    }
}
