package groundbass.fingering;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The cheapest ways through the grips of successive moments, by dynamic programming: the best way to a grip needs only
 * the best ways to the grips of the moment before (Sayegh, "Fingering for string instruments with the optimum path
 * paradigm", Computer Music Journal 13(3), 1989; from memory).
 *
 * <p>For several ways each grip keeps as many entries as are asked for, no two with the same places so far; fingers and
 * positions alone do not make another way.
 */
public final class Search {
    private final List<SoundingMoment> moments;
    private final List<List<Hold>> layers;

    private Search(Fretboard neck, Hand hand, List<SoundingMoment> moments, Predicate<Hold> admitted) {
        this.moments = moments;
        this.layers = new Grips(neck, new Effort(neck, hand))
                .of(moments).stream()
                        .map(layer -> layer.stream().filter(admitted).toList())
                        .toList();
    }

    /** The cheapest way; empty where a note is not on the neck, or where there are no moments. */
    public static Optional<Way> best(Fretboard neck, Hand hand, List<SoundingMoment> moments) {
        return ways(neck, hand, moments, 1).stream().findFirst();
    }

    /** At most {@code most} ways that differ in places, the cheapest first. */
    public static List<Way> ways(Fretboard neck, Hand hand, List<SoundingMoment> moments, int most) {
        return new Search(neck, hand, moments, hold -> true).run(most);
    }

    /** The cheapest way that keeps the index at one fret; empty where there is none without the impossible. */
    public static Optional<Way> inPosition(Fretboard neck, Hand hand, List<SoundingMoment> moments, int position) {
        return new Search(neck, hand, moments, hold -> hold.position == position)
                .run(1).stream().filter(way -> way.cost().isPossible()).findFirst();
    }

    /** How a grip was reached: at which price, from which entry of the layer before, and over which places. */
    private record Entry(double cost, Hold hold, Entry from, long places) {}

    private List<Way> run(int most) {
        if (layers.isEmpty() || layers.stream().anyMatch(List::isEmpty)) {
            return List.of();
        }
        List<List<Entry>> reached = new ArrayList<>();
        for (var hold : layers.get(0)) {
            reached.add(List.of(new Entry(hold.cost, hold, null, hold.places())));
        }
        for (int i = 1; i < layers.size(); i++) {
            reached = step(reached, layers.get(i), new Movement(moments.get(i - 1), moments.get(i)), most);
        }
        var ends = reached.stream().flatMap(List::stream).toList();
        return cheapest(new ArrayList<>(ends), most).stream().map(this::way).toList();
    }

    private static List<List<Entry>> step(List<List<Entry>> reached, List<Hold> next, Movement movement, int most) {
        var entries = new ArrayList<List<Entry>>(next.size());
        // one after the other by cost, so that what is dearer than the best way found need not be tried
        reached.sort(Comparator.comparingDouble(each -> each.get(0).cost()));
        for (var hold : next) {
            entries.add(most == 1 ? List.of(best(reached, hold, movement)) : several(reached, hold, movement, most));
        }
        return entries;
    }

    private static Entry best(List<List<Entry>> reached, Hold hold, Movement movement) {
        var best = reached.get(0).get(0);
        double least = best.cost() + movement.cost(best.hold(), hold);
        for (int i = 1; i < reached.size(); i++) {
            var from = reached.get(i).get(0);
            if (from.cost() >= least) {
                break;
            }
            double cost = from.cost() + movement.cost(from.hold(), hold);
            if (cost < least) {
                least = cost;
                best = from;
            }
        }
        return after(best, least, hold);
    }

    private static List<Entry> several(List<List<Entry>> reached, Hold hold, Movement movement, int most) {
        var all = new ArrayList<Entry>();
        for (var each : reached) {
            double moving = movement.cost(each.get(0).hold(), hold);
            for (var from : each) {
                all.add(after(from, from.cost() + moving, hold));
            }
        }
        return cheapest(all, most);
    }

    private static Entry after(Entry from, double cost, Hold hold) {
        return new Entry(cost + hold.cost, hold, from, from.places() * 1_000_000_007L + hold.places());
    }

    private static List<Entry> cheapest(List<Entry> entries, int most) {
        entries.sort(Comparator.comparingDouble(Entry::cost));
        var seen = new HashSet<Long>();
        var kept = new ArrayList<Entry>();
        for (var entry : entries) {
            if (kept.size() < most && seen.add(entry.places())) {
                kept.add(entry);
            }
        }
        return kept;
    }

    private Way way(Entry end) {
        var holds = new Hold[layers.size()];
        var entry = end;
        for (int i = holds.length - 1; i >= 0; i--) {
            holds[i] = entry.hold();
            entry = entry.from();
        }
        var costs = new ArrayList<Cost>();
        for (int i = 0; i < holds.length; i++) {
            costs.add(cost(holds, i));
        }
        return new Way(Arrays.stream(holds).map(Hold::toGrip).toList(), costs);
    }

    /** What the grip of one moment costs, and the way to it. */
    private Cost cost(Hold[] holds, int index) {
        var parts = holds[index].parts.clone();
        if (index > 0) {
            new Movement(moments.get(index - 1), moments.get(index)).addTo(parts, holds[index - 1], holds[index]);
        }
        return Cost.of(parts);
    }
}
