package groundbass.script.thread.whole;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.ArrayList;
import java.util.List;

/**
 * What a clause says of the time that it names: of "open E, and then B on two" the B alone, of "from the G up to the B on
 * three" where it leads.
 */
public final class AtItsTime {
    private AtItsTime() {}

    /** The clause itself where all of it may be said of its time. */
    public static Clause of(Clause clause) {
        var units = withoutCrossed(afterThen(clause.units()));
        boolean way = !clause.has(Constituent.Played.class)
                && !clause.has(Constituent.Interval.class)
                && !clause.has(Constituent.Octaves.class);
        units = way ? withoutSource(units) : units;
        return units.size() == clause.units().size() ? clause : new Clause(units);
    }

    private static List<Read> afterThen(List<Read> units) {
        for (int then = units.size() - 2; then > 0; then--) {
            var before = units.subList(0, then);
            var after = units.subList(then + 1, units.size());
            boolean here = units.get(then).is(Tie.THEN)
                    && isContent(before)
                    && isContent(after)
                    && isTimed(after)
                    && !isTimed(before);
            if (here) {
                return after;
            }
        }
        return units;
    }

    /** "It rings over beat three": the beat is crossed, and nothing begins there. */
    private static List<Read> withoutCrossed(List<Read> units) {
        for (int over = 1; over + 1 < units.size(); over++) {
            boolean one = units.get(over + 1).unit() instanceof Constituent.Beats beats
                    && beats.numbers().size() == 1;
            if (one && units.get(over).is(Tie.OVER)) {
                var rest = new ArrayList<>(units);
                rest.subList(over, over + 2).clear();
                return rest;
            }
        }
        return units;
    }

    private static List<Read> withoutSource(List<Read> units) {
        int from = -1;
        int to = -1;
        for (int i = 0; i < units.size(); i++) {
            from = from < 0 && units.get(i).is(Tie.FROM) ? i : from;
            to = from >= 0 && to < 0 && units.get(i).is(Tie.TO) ? i : to;
        }
        boolean source = from >= 0
                && to > from + 1
                && isTimed(units.subList(to, units.size()))
                && !isTimed(units.subList(0, to))
                && isContent(units.subList(to, units.size()));
        if (!source) {
            return units;
        }
        var rest = new ArrayList<>(units.subList(0, from));
        rest.addAll(units.subList(to, units.size()));
        return rest;
    }

    private static boolean isContent(List<Read> units) {
        return units.stream()
                .anyMatch(read -> !(read.unit() instanceof Constituent.Small)
                        && !read.is(Constituent.Unknown.class)
                        && !read.isTime());
    }

    private static boolean isTimed(List<Read> units) {
        return units.stream().anyMatch(Read::isTime);
    }
}
