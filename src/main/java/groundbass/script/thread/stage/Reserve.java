package groundbass.script.thread.stage;

import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Words with which a clause may mean the opposite of what it names, another place, or nothing that is played. */
public final class Reserve {
    private static final Set<Tie> TURNING =
            Set.of(Tie.MAYBE, Tie.NOT, Tie.NO, Tie.EXCEPT, Tie.ANY, Tie.BEFORE, Tie.ABOVE, Tie.BELOW, Tie.OTHER);

    /** What is said of a note's place or length may be said of the one that it is compared with. */
    private static final Set<Class<? extends Constituent>> COMPARED = Set.of(
            Constituent.Name.class,
            Constituent.Place.class,
            Constituent.Value.class,
            Constituent.Lasting.class,
            Constituent.ChordTone.class,
            Constituent.Open.class,
            Constituent.ChordNamed.class,
            Constituent.KeyNamed.class);

    private Reserve() {}

    public static boolean isIn(PlacedClause said) {
        boolean turned = said.units().stream()
                .anyMatch(unit -> unit instanceof Constituent.Small small && TURNING.contains(small.tie()));
        boolean swung = said.has(Tie.LONG) && said.has(Rank.class); // "of two eighths the first is long"
        boolean extreme = said.all(Rank.class).stream()
                .anyMatch(rank -> rank.which() == Rank.Which.HIGHEST || rank.which() == Rank.Which.LOWEST);
        boolean compared = said.hasAny(Tie.LIKE, Tie.SAME, Tie.DIFFERENT)
                && said.units().stream().anyMatch(unit -> COMPARED.contains(unit.getClass()));
        return turned || swung || extreme || compared || hasLooseNumber(said.units());
    }

    /** "The last note of two": of which two, nobody knows. */
    private static boolean hasLooseNumber(List<Constituent> units) {
        return IntStream.range(1, units.size())
                .anyMatch(i -> units.get(i) instanceof Constituent.Number && PlacedClause.is(units.get(i - 1), Tie.OF));
    }
}
