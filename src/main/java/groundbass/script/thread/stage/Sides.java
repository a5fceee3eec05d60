package groundbass.script.thread.stage;

import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where a clause has its verb, and what stands before and behind it. */
public final class Sides {
    private static final Set<Tie> VERBS = Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.HOLD, Tie.FALL);

    private Sides() {}

    /** "After that" is no more than "after". */
    public static List<Constituent> withoutReference(List<Constituent> units) {
        var plain = new ArrayList<Constituent>();
        for (int i = 0; i < units.size(); i++) {
            boolean pointing = PlacedClause.is(units.get(i), Tie.THAT) || PlacedClause.is(units.get(i), Tie.IT);
            if (!pointing || i == 0 || !PlacedClause.is(units.get(i - 1), Tie.AFTER)) {
                plain.add(units.get(i));
            }
        }
        return plain;
    }

    /** Without a verb, something more is said of the notes that were spoken of: "all three on D", "frets two and five". */
    public static boolean isFragment(PlacedClause said) {
        boolean placed = said.scope().isSaid() || said.scope().time().isPresent();
        boolean pointing = said.hasAny(Tie.ALL, Tie.BOTH, Tie.THEY);
        boolean rows = said.all(Constituent.Place.class).size() > 1
                && said.all(Constituent.Place.class).size()
                        == said.memory().notes().size();
        boolean place = isPlaceAlone(said);
        boolean onward = said.hasAny(Tie.THEN, Tie.AFTER);
        return verb(said.units()) < 0 && !placed && !onward && (pointing || rows || place);
    }

    /** "On the A string", "on the fifth fret of the D string": of the note that was spoken of. */
    private static boolean isPlaceAlone(PlacedClause said) {
        boolean on = !said.units().isEmpty()
                && (PlacedClause.is(said.units().get(0), Tie.ON)
                        || PlacedClause.is(said.units().get(0), Tie.IN));
        boolean one = said.units().stream()
                        .filter(unit -> !(unit instanceof Constituent.Small))
                        .allMatch(Constituent.Place.class::isInstance)
                && said.all(Constituent.Place.class).size() == 1;
        return on && one && !said.memory().notes().isEmpty();
    }

    /** "You find it on ...": what is spoken of comes after the verb. */
    public static Optional<Constituent> object(List<Constituent> units, int verb, List<Constituent> left) {
        boolean we = left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.WE));
        boolean pronoun = verb >= 0
                && verb + 1 < units.size()
                && (PlacedClause.is(units.get(verb + 1), Tie.IT) || PlacedClause.is(units.get(verb + 1), Tie.THEY));
        boolean german = verb >= 0
                && verb + 2 < units.size()
                && PlacedClause.is(units.get(verb + 1), Tie.WE)
                && PlacedClause.is(units.get(verb + 2), Tie.IT);
        return pronoun && we
                ? Optional.of(units.get(verb + 1))
                : german ? Optional.of(units.get(verb + 2)) : Optional.empty();
    }

    public static boolean hasTwoVerbs(List<Constituent> units) {
        return units.subList(0, Math.max(0, units.size() - 1)).stream()
                        .filter(unit -> PlacedClause.is(unit, Tie.BE))
                        .count()
                > 1;
    }

    public static int verb(List<Constituent> units) {
        for (int i = 0; i < units.size(); i++) {
            if (units.get(i) instanceof Constituent.Small small && VERBS.contains(small.tie())) {
                return i;
            }
        }
        return -1;
    }

    /** What stands after the verb, without words that add nothing. */
    public static List<Constituent> right(List<Constituent> units, int verb) {
        var right = new ArrayList<Constituent>();
        for (var unit : units.subList(verb + 1, units.size())) {
            boolean idle = PlacedClause.is(unit, Tie.WE)
                    || PlacedClause.is(unit, Tie.THERE)
                    || PlacedClause.is(unit, Tie.PLAY)
                    || PlacedClause.is(unit, Tie.BE)
                    || PlacedClause.is(unit, Tie.HAVE)
                    || (right.isEmpty() && PlacedClause.is(unit, Tie.IT));
            if (!idle) {
                right.add(unit);
            }
        }
        return right;
    }
}
