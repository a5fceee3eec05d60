package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Finds the tuplets of a voice from exact times alone. Every time that no plain shape reaches must lie inside a
 * tuplet; of all ways to lay tuplets over the bar the cheapest wins. A tuplet costs the square of its shares, and more
 * where it does not begin and end on beats with a note (our own weighing; the results are those of common practice).
 */
final class TupletSearch {
    private static final int LONGEST_IN_JOINTS = 32;
    private static final long UNREPRESENTABLE = 1_000_000;
    private static final long UNREACHED = Long.MAX_VALUE;

    private final Pulse pulse;
    private final TreeSet<Fraction> edges;
    private final List<Fraction> joints;

    private TupletSearch(Pulse pulse, Bar bar, TreeSet<Fraction> edges) {
        this.pulse = pulse;
        this.edges = edges;
        this.joints = joints(bar);
    }

    /** In order; they do not overlap. */
    static List<TupletWindow> of(Pulse pulse, Bar bar, List<VoiceSpan> spans) {
        var edges = new TreeSet<Fraction>();
        spans.forEach(span -> edges.addAll(List.of(span.from(), span.to())));
        var tuplets = new TupletSearch(pulse, bar, edges);
        boolean plain = edges.stream().allMatch(Pulse::isWritable);
        return plain ? tuplets.inBeatsOfThree() : tuplets.cheapest();
    }

    /** Where a tuplet may begin and end. */
    private List<Fraction> joints(Bar bar) {
        var ends = Set.of(bar.from(), bar.to());
        return Stream.concat(
                        Stream.concat(edges.stream().filter(Pulse::isWritable), pulse.joints().stream()), ends.stream())
                .filter(at -> !at.isBefore(bar.from()) && !at.isAfter(bar.to()))
                .distinct()
                .sorted()
                .toList();
    }

    private List<TupletWindow> inBeatsOfThree() {
        var windows = new ArrayList<TupletWindow>();
        for (var start : pulse.beatStarts()) {
            if (isDivided(start, pulse.beatEnd(start))) {
                windows.addAll(window(start, pulse.beatEnd(start)));
            }
        }
        return windows;
    }

    private List<TupletWindow> cheapest() {
        long[] cost = new long[joints.size()];
        int[] origin = new int[joints.size()];
        Arrays.fill(cost, 1, cost.length, UNREACHED);
        for (int end = 1; end < joints.size(); end++) {
            for (int start = end - 1; start >= Math.max(0, end - LONGEST_IN_JOINTS); start--) {
                long through = cost[start] + cost(start, end);
                if (through < cost[end]) {
                    cost[end] = through;
                    origin[end] = start;
                }
            }
        }
        return path(origin);
    }

    private List<TupletWindow> path(int[] origin) {
        var windows = new ArrayList<TupletWindow>();
        for (int end = joints.size() - 1; end > 0; end = origin[end]) {
            var from = joints.get(origin[end]);
            var to = joints.get(end);
            if (needsTuplet(from, to) || isDivided(from, to)) {
                windows.addAll(window(from, to));
            }
        }
        Collections.reverse(windows);
        return windows;
    }

    private long cost(int start, int end) {
        var from = joints.get(start);
        var to = joints.get(end);
        if (isDivided(from, to)) {
            return -1;
        }
        if (!needsTuplet(from, to)) {
            return end == start + 1 ? 0 : UNREPRESENTABLE * (end - start);
        }
        return TupletWindow.of(from, to, inside(from, to))
                        .map(window -> (long) window.actual() * window.actual())
                        .orElse(UNREPRESENTABLE * (end - start))
                + costOfEnd(from)
                + costOfEnd(to);
    }

    private int costOfEnd(Fraction at) {
        if (pulse.isBeat(at)) {
            return edges.contains(at) ? 0 : 1;
        }
        return 5 * (pulse.weakness(at) - (edges.contains(at) ? 1 : 0));
    }

    private List<TupletWindow> window(Fraction from, Fraction to) {
        return TupletWindow.of(from, to, inside(from, to)).stream().toList();
    }

    private SortedSet<Fraction> inside(Fraction from, Fraction to) {
        return edges.subSet(from, false, to, false);
    }

    private boolean needsTuplet(Fraction from, Fraction to) {
        return inside(from, to).stream().anyMatch(at -> !Pulse.isWritable(at));
    }

    /** Two, four or eight in the time of three counts (rule: tuplet-ratio; eight by the same reasoning). */
    private boolean isDivided(Fraction from, Fraction to) {
        if (!isBeatOfThree(from, to)) {
            return false;
        }
        var eighth = to.minus(from).dividedBy(8);
        var inside = inside(from, to);
        return !inside.isEmpty()
                && inside.stream().allMatch(at -> at.minus(from).isOnGrid(eighth));
    }

    private boolean isBeatOfThree(Fraction from, Fraction to) {
        return !pulse.isSimple()
                && pulse.beatStart(from).equals(from)
                && pulse.beatEnd(from).equals(to)
                && to.minus(from).equals(pulse.unit().times(3))
                && !from.isBefore(edges.first())
                && !to.isAfter(edges.last());
    }
}
