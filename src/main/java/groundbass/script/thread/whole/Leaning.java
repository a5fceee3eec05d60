package groundbass.script.thread.whole;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Completes a clause by the one before it, where it leaves out what was just said: "from the G up to the C - that's a
 * fourth", "bar one has nine notes, and bar two has nine as well".
 */
public final class Leaning {
    /** Words of a way, or of an amount, that add nothing to it. */
    private static final Set<Tie> AROUND = Set.of(
            Tie.BE, Tie.HAVE, Tie.PLAY, Tie.WE, Tie.IT, Tie.THAT, Tie.THERE, Tie.SO, Tie.AND, Tie.COMMA, Tie.STOP,
            Tie.ONLY, Tie.THEN, Tie.BUT, Tie.COLON, Tie.AGAIN, Tie.YES, Tie.SUM, Tie.CLIMB, Tie.FALL, Tie.UP, Tie.DOWN);

    private static final Set<Tie> OF_WAYS =
            Set.of(Tie.FROM, Tie.TO, Tie.UP, Tie.DOWN, Tie.OF, Tie.AND, Tie.NOTE, Tie.ONE, Tie.AT, Tie.ON, Tie.IN);

    private Leaning() {}

    /** Empty where the clause stands by itself. */
    public static Optional<Clause> completed(Clause clause, Clause before) {
        return far(clause, before).or(() -> amount(clause, before)).or(() -> shifted(clause, before));
    }

    /** A distance that is said of the way just named. */
    private static Optional<Clause> far(Clause clause, Clause before) {
        var distance = clause.units().stream()
                .filter(read -> read.is(Constituent.Interval.class) || read.is(Constituent.Octaves.class))
                .toList();
        boolean bare = distance.size() == 1
                && clause.units().stream().allMatch(read -> read == distance.get(0) || isAround(read));
        boolean named = before.has(Constituent.Interval.class) || before.has(Constituent.Octaves.class);
        if (!bare || named || before.has(Tie.NOT) || before.has(Tie.NO)) {
            return Optional.empty();
        }
        return way(before.units()).or(() -> way(lastPhrase(before.units()))).map(way -> {
            var units = new ArrayList<>(way);
            int at = distance.get(0).from();
            clause.units().stream().filter(Leaning::isDirection).forEach(units::add);
            units.add(new Read(new Constituent.Small(Tie.BE), at, at));
            units.add(distance.get(0));
            return new Clause(units);
        });
    }

    /** "From ... to ...", with nothing else; empty where the clause names no two ends. */
    private static Optional<List<Read>> way(List<Read> units) {
        var way = new ArrayList<Read>();
        for (var read : units) {
            boolean tie = read.unit() instanceof Constituent.Small small && OF_WAYS.contains(small.tie());
            boolean idle = read.unit() instanceof Constituent.Small || read.is(Constituent.Unknown.class);
            if (tie || !idle) {
                way.add(read);
            }
        }
        int and = alone(way, Tie.AND);
        if (alone(way, Tie.TO) < 0 && and > 0) { // "take the G and the C"
            way.set(and, small(Tie.TO, way.get(and)));
        }
        way.removeIf(read -> read.is(Tie.AND));
        int to = alone(way, Tie.TO);
        boolean both = to > 0 && isEnd(way.subList(0, to)) && isEnd(way.subList(to, way.size()));
        if (!both) {
            return Optional.empty();
        }
        if (way.stream().noneMatch(read -> read.is(Tie.FROM))) {
            way.add(0, small(Tie.FROM, way.get(0)));
        }
        return Optional.of(way);
    }

    /** "Up to that B, E up to B": what stands behind the last comma. */
    private static List<Read> lastPhrase(List<Read> units) {
        int from = 0;
        for (int i = 0; i < units.size(); i++) {
            from = units.get(i).is(Tie.COMMA) ? i + 1 : from;
        }
        return units.subList(from, units.size());
    }

    private static Read small(Tie tie, Read at) {
        return new Read(new Constituent.Small(tie), at.from(), at.to());
    }

    /** Index of the only one; -1 where there is none, or several. */
    private static int alone(List<Read> units, Tie tie) {
        int found = -1;
        for (int i = 0; i < units.size(); i++) {
            boolean here = units.get(i).is(tie);
            if (here && found >= 0) {
                return -1;
            }
            found = here ? i : found;
        }
        return found;
    }

    /** One note: by its name, its place, or which of several it is. */
    private static boolean isEnd(List<Read> units) {
        long names = units.stream()
                .filter(read -> read.is(Constituent.Name.class) || read.is(Constituent.Place.class))
                .count();
        boolean ranked = units.stream().anyMatch(read -> read.is(Constituent.Rank.class));
        return names == 1 || names == 0 && ranked;
    }

    /** "It is bar three, but moved two frets up": how far, of the bars that were compared just now. */
    private static Optional<Clause> shifted(Clause clause, Clause before) {
        var move = clause.units().stream()
                .filter(read -> read.is(Constituent.Move.class))
                .toList();
        long bars = before.units().stream()
                .filter(read -> read.is(Constituent.Bars.class))
                .count();
        boolean alike = bars == 2 && (before.has(Tie.LIKE) || before.has(Tie.SAME) || before.has(Tie.AGAIN));
        boolean bare = move.size() == 1
                && clause.units().stream()
                        .allMatch(read -> read == move.get(0)
                                || read.is(Constituent.Unknown.class)
                                || read.is(Tie.OTHER)
                                || read.is(Tie.TO)
                                || isAround(read));
        if (!alike || !bare || before.has(Constituent.Move.class)) {
            return Optional.empty();
        }
        var units = new ArrayList<>(before.units());
        units.add(move.get(0));
        clause.units().stream().filter(Leaning::isDirection).forEach(units::add);
        return Optional.of(new Clause(units));
    }

    /** "Bar two has nine": as many of what was just counted. */
    private static Optional<Clause> amount(Clause clause, Clause before) {
        var number = clause.units().stream()
                .filter(read -> read.is(Constituent.Number.class))
                .toList();
        boolean bare = number.size() == 1
                && clause.has(Constituent.Bars.class)
                && (clause.has(Tie.HAVE) || clause.has(Tie.IN))
                && clause.units().stream()
                        .allMatch(read -> read == number.get(0)
                                || read.is(Constituent.Bars.class)
                                || isAround(read)
                                || read.is(Tie.IN));
        var counted = bare ? counted(before) : Optional.<Read>empty();
        return counted.map(noun -> {
            var units = new ArrayList<>(clause.units());
            int at = units.indexOf(number.get(0));
            var said = number.get(0);
            int many = ((Constituent.Number) said.unit()).value();
            units.set(at, new Read(new Constituent.Count(many), said.from(), said.to()));
            units.add(at + 1, new Read(noun.unit(), said.to(), said.to()));
            return new Clause(units);
        });
    }

    /** What stands behind the only number of a clause. */
    private static Optional<Read> counted(Clause before) {
        for (int i = 0; i + 1 < before.units().size(); i++) {
            var noun = before.units().get(i + 1);
            boolean counts = before.units().get(i).is(Constituent.Count.class);
            if (counts) {
                return Optional.of(noun)
                        .filter(read -> read.is(Tie.NOTE)
                                || read.is(Constituent.Played.class)
                                || read.is(Constituent.Dead.class)
                                || read.is(Constituent.Silence.class)
                                || read.is(Constituent.Triplet.class));
            }
        }
        return Optional.empty();
    }

    private static boolean isDirection(Read read) {
        return read.is(Tie.UP) || read.is(Tie.DOWN) || read.is(Tie.CLIMB) || read.is(Tie.FALL);
    }

    private static boolean isAround(Read read) {
        return read.unit() instanceof Constituent.Small small && AROUND.contains(small.tie());
    }
}
