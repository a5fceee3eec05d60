package groundbass.catalog.series;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * When lessons of a series go out: every so many weeks on the weekday of the first day, at an hour of the clock on the
 * wall, which stays the same when clocks are changed.
 *
 * @param first the first day
 * @param weeks from one to the next, 1 to {@value #MOST_WEEKS}
 * @param breaks days on which none goes out
 */
public record ReleaseRhythm(LocalDate first, LocalTime time, int weeks, SortedSet<LocalDate> breaks) {
    public static final int MOST_WEEKS = 8;

    public ReleaseRhythm {
        breaks = new TreeSet<>(breaks);
        if (weeks < 1 || weeks > MOST_WEEKS) {
            throw new IllegalArgumentException(
                    "from one lesson to the next are 1 to " + MOST_WEEKS + " weeks: " + weeks);
        }
    }

    @Override
    public SortedSet<LocalDate> breaks() {
        return new TreeSet<>(breaks);
    }

    /** Its hours from a day on, without end. */
    public Stream<LocalDateTime> from(LocalDate day) {
        return days(day).filter(date -> !breaks.contains(date)).map(date -> date.atTime(time));
    }

    /** Whether a lesson would go out on that day if it were no break. */
    public boolean holds(LocalDate day) {
        return days(day).findFirst().filter(day::equals).isPresent();
    }

    /** Whether this is an hour of it, a break or not. */
    public boolean isHour(LocalDateTime hour) {
        return time.equals(hour.toLocalTime()) && holds(hour.toLocalDate());
    }

    /** Its days from one on, breaks among them. */
    private Stream<LocalDate> days(LocalDate day) {
        long behind = Math.max(0, day.toEpochDay() - first.toEpochDay());
        long step = 7L * weeks;
        var begin = first.plusDays((behind + step - 1) / step * step);
        return Stream.iterate(begin, date -> date.plusDays(step));
    }
}
