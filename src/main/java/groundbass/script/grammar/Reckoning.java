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
        counted(kept);
        summed(kept);
        for (int i = kept.size() - 1; i >= 0; i--) {
            if (kept.get(i).is(Tie.RECKON)) {
                i = takeOut(kept, i);
            }
        }
        return List.copyOf(kept);
    }

    /** "If you count the dead notes, you'll find two of them": so many dead notes. */
    private static void counted(List<Read> units) {
        int at = 0;
        while (at < units.size() && !units.get(at).is(Tie.RECKON)) {
            at++;
        }
        int thing = at + 1;
        while (thing < units.size() && units.get(thing).unit() instanceof Constituent.Small) {
            thing++;
        }
        for (int of = thing + 2; of + 1 < units.size(); of++) {
            boolean several = units.get(of).is(Tie.OF)
                    && units.get(of + 1).is(Tie.THEY)
                    && units.get(of - 1).isAmount()
                    && isReckoned(units.get(thing));
            if (several) {
                var amount = units.get(of - 1);
                units.set(of - 1, new Read(new Constituent.Count(amount.many()), amount.from(), amount.to()));
                units.set(of, new Read(units.get(thing).unit(), amount.to(), amount.to()));
                units.remove(of + 1);
                return;
            }
        }
    }

    /** "Count the dead notes in that bar and you get three": so many of them. */
    private static void summed(List<Read> units) {
        int at = 0;
        while (at < units.size()
                && units.get(at).unit() instanceof Constituent.Small
                && !units.get(at).is(Tie.RECKON)) {
            at++;
        }
        int last = units.size() - 1;
        while (last > 0 && !units.get(last).isAmount() && units.get(last).unit() instanceof Constituent.Small) {
            last--;
        }
        int thing = at + 1;
        while (thing < last && units.get(thing).is(Tie.THE)) {
            thing++;
        }
        boolean sum = at < thing
                && thing < last
                && units.get(at).is(Tie.RECKON)
                && units.get(last).isAmount()
                && (isReckoned(units.get(thing)) && !units.get(thing).is(Tie.THEY)
                        || units.get(thing).is(Constituent.Silence.class));
        var between = sum ? units.subList(thing + 1, last) : List.<Read>of();
        boolean verb = between.stream().anyMatch(read -> read.is(Tie.PLAY) || read.is(Tie.HAVE) || read.is(Tie.BE));
        boolean plain = between.stream()
                .allMatch(read -> read.unit() instanceof Constituent.Small
                        || Units.isMoment(read)
                        || read.is(Constituent.Whole.class));
        if (!verb || !plain) {
            return;
        }
        var noun = units.get(thing);
        var amount = units.get(last);
        var said = new ArrayList<Read>();
        between.stream()
                .filter(read -> !(read.unit() instanceof Constituent.Small))
                .forEach(said::add);
        said.add(new Read(new Constituent.Small(Tie.WE), amount.from(), amount.from()));
        said.add(new Read(new Constituent.Small(Tie.HAVE), amount.from(), amount.from()));
        said.add(new Read(new Constituent.Count(amount.many()), amount.from(), amount.to()));
        said.add(new Read(noun.unit(), amount.to(), amount.to()));
        var whole = units.subList(at, last + 1);
        whole.clear();
        units.addAll(at, said);
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
