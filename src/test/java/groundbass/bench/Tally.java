package groundbass.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** How long one kind of deed took, and what went wrong. Thread-safe. */
final class Tally {
    private final List<Double> answered = new ArrayList<>();
    private final List<Double> whole = new ArrayList<>();
    private final Map<String, Integer> failed = new TreeMap<>();

    synchronized void answered(double millis) {
        answered.add(millis);
    }

    synchronized void whole(double millis) {
        whole.add(millis);
    }

    synchronized void failed(Exception fault) {
        failed.merge(String.valueOf(fault.getMessage()), 1, Integer::sum);
    }

    /** Half and 99 of 100 of the first answers, the same with all that belongs to it, and the faults. */
    synchronized String told() {
        return String.format(
                Locale.ROOT,
                "%,7d  first answer p50 %6.0f p99 %6.0f ms   all of it p50 %6.0f p99 %6.0f ms   failed %d %s",
                whole.size(),
                part(answered, 50),
                part(answered, 99),
                part(whole, 50),
                part(whole, 99),
                failed.values().stream().mapToInt(n -> n).sum(),
                failed.isEmpty() ? "" : failed);
    }

    private static double part(List<Double> millis, int percent) {
        var sorted = millis.stream().sorted().toList();
        return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() * percent / 100);
    }
}
