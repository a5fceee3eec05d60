package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Takes out what a speaker reckons in: "nine notes, if you count the dead one". Whoever checks a number grants that dead
 * notes are counted, and that they are not.
 */
final class Reckoning {
    private static final Set<Tie> LEADING = Set.of(Tie.MAYBE, Tie.WE, Tie.AND);
    private static final Set<Tie> INSIDE = Set.of(Tie.NOTE, Tie.ONE, Tie.THE, Tie.ALL, Tie.BOTH, Tie.THEY, Tie.IN);

    private Reckoning() {}

    static List<Read> without(List<Read> units) {
        var kept = new ArrayList<>(units);
        for (int i = kept.size() - 1; i >= 0; i--) {
            if (kept.get(i).is(Tie.RECKON)) {
                i = takeOut(kept, i);
            }
        }
        return List.copyOf(kept);
    }

    /** Takes out the word at an index with what belongs to it; the index of what now stands before. */
    private static int takeOut(List<Read> units, int at) {
        int after = at + 1;
        while (after < units.size() && isReckoned(units.get(after))) {
            after++;
        }
        boolean follows = isThing(units.subList(at, after));
        int from = before(units, at, follows ? Reckoning::isLeading : read -> isReckoned(read) || isLeading(read));
        boolean whole = follows || isThing(units.subList(from, at));
        if (!whole) { // "so count along"
            units.set(
                    at,
                    new Read(
                            new Constituent.Small(Tie.PLAY),
                            units.get(at).from(),
                            units.get(at).to()));
            return at;
        }
        var taken = units.subList(from, after);
        var comma = new Read(
                new Constituent.Small(Tie.COMMA),
                taken.get(0).from(),
                taken.get(0).to());
        taken.clear();
        units.add(from, comma); // what stands on both sides does not belong together
        return from;
    }

    private static int before(List<Read> units, int at, Predicate<Read> belongs) {
        int from = at;
        while (from > 0 && belongs.test(units.get(from - 1))) {
            from--;
        }
        return from;
    }

    private static boolean isThing(List<Read> units) {
        return units.stream().anyMatch(read -> !(read.unit() instanceof Constituent.Small));
    }

    private static boolean isLeading(Read read) {
        return read.unit() instanceof Constituent.Small small && LEADING.contains(small.tie());
    }

    private static boolean isReckoned(Read read) {
        return read.is(Constituent.Dead.class)
                || read.is(Constituent.Triplet.class)
                || read.is(Constituent.Played.class)
                || read.unit() instanceof Constituent.Small small && INSIDE.contains(small.tie());
    }
}
