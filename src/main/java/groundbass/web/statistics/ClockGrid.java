package groundbass.web.statistics;

import groundbass.audience.statistics.HourUse;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The hours of a week, seven rows of twenty-four, the darker the more was taken in them. */
public record ClockGrid(List<Square> squares, Optional<HourUse> best, List<HourUse> busiest) {
    private static final int NAMED = 10;

    public ClockGrid {
        squares = List.copyOf(squares);
        busiest = List.copyOf(busiest);
    }

    /** An hour in which something was taken. */
    public record Square(HourUse use, String opacity) {}

    static ClockGrid of(List<HourUse> hours) {
        var busiest = hours.stream()
                .sorted(Comparator.comparingLong(HourUse::downloads).reversed())
                .limit(NAMED)
                .toList();
        double most = busiest.stream().mapToLong(HourUse::downloads).max().orElse(1);
        var squares = hours.stream()
                .map(hour -> new Square(hour, String.format(Locale.ROOT, "%.2f", hour.downloads() / most)))
                .toList();
        return new ClockGrid(squares, busiest.stream().findFirst(), busiest);
    }
}
