package groundbass.script.thread;

import groundbass.score.Ornaments.Mark;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Subject;
import groundbass.script.thread.stage.Wrongs;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Contradicts where it is denied that notes which were spoken of are as they are: "that one isn't short". */
final class Denials implements Reader {
    private static final Set<Tie> OTHERWISE = Set.of(
            Tie.MAYBE,
            Tie.EXCEPT,
            Tie.ONLY,
            Tie.BUT,
            Tie.LIKE,
            Tie.SAME,
            Tie.DIFFERENT,
            Tie.ANY,
            Tie.OTHER,
            Tie.WHAT,
            Tie.ABOVE,
            Tie.BELOW,
            Tie.BEFORE,
            Tie.AFTER);

    private final Stage stage;

    Denials(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        int not = not(said.units());
        boolean otherwise = said.units().stream()
                .anyMatch(unit -> unit instanceof Constituent.Small small && OTHERWISE.contains(small.tie()));
        if (not < 0 || otherwise) {
            return Optional.empty();
        }
        var qualities = said.units().subList(not + 1, said.units().size()).stream()
                .filter(unit -> !(unit instanceof Constituent.Small))
                .toList();
        boolean one = qualities.size() == 1 && isQuality(qualities.get(0));
        return one ? denied(qualities.get(0), subject(said, not), said) : Optional.empty();
    }

    private static int not(List<Constituent> units) {
        int not = -1;
        for (int i = 0; i < units.size(); i++) {
            boolean unaccented = PlacedClause.is(units.get(i), Tie.NO)
                    && i + 1 < units.size()
                    && units.get(i + 1) instanceof Constituent.Played played
                    && played.manner() == Manner.ACCENT; // "softly, no accent"
            boolean here = PlacedClause.is(units.get(i), Tie.NOT) || unaccented;
            if (here && not >= 0) {
                return -1; // what is denied twice, nobody knows
            }
            not = here ? i : not;
        }
        return not;
    }

    private static boolean isQuality(Constituent unit) {
        return unit instanceof Constituent.Short
                || unit instanceof Constituent.Dead
                || unit instanceof Constituent.Played;
    }

    /** What stands before the denial, or what the words behind it point to. */
    private static List<Constituent> subject(PlacedClause said, int not) {
        var left = said.units().subList(0, not).stream()
                .filter(unit -> !PlacedClause.is(unit, Tie.BE)
                        && !PlacedClause.is(unit, Tie.THERE)
                        && !PlacedClause.is(unit, Tie.HAVE)
                        && !PlacedClause.is(unit, Tie.PLAY))
                .toList();
        boolean named = !Subject.isNone(left);
        return named
                ? left
                : said.units().subList(not + 1, said.units().size()).stream()
                        .filter(unit -> PlacedClause.is(unit, Tie.IT)
                                || PlacedClause.is(unit, Tie.THAT)
                                || PlacedClause.is(unit, Tie.ONE))
                        .toList();
    }

    private Optional<Judged> denied(Constituent quality, List<Constituent> left, PlacedClause said) {
        boolean pointing = left.stream().anyMatch(unit -> !Subject.isNone(List.of(unit)));
        var subject = pointing ? Subject.of(left, said, stage) : Optional.<Subject>empty();
        var item = Items.of(List.of(quality), stage).map(row -> row.items().get(0));
        return subject.flatMap(
                meant -> item.filter(there -> meant.notes().stream().allMatch(at -> isSo(there, quality, at)))
                        .map(there -> Judged.wrong(Wrongs.note(meant.notes().get(0), there, stage), meant.notes())));
    }

    /** How short a note is, is a matter of taste, unless it is marked so. */
    private static boolean isSo(Item item, Constituent quality, At at) {
        return quality instanceof Constituent.Short ? at.note().has(Mark.SHORT) : item.fits(at);
    }
}
