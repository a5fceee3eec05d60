package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Descriptions;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Reserve;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Contradicts how many notes a bar is said to have, among words that were not understood. */
final class Amounts implements Reader {
    /** Words with which some of a bar's notes are counted, and not all. */
    private static final Set<Tie> OF_SOME = Set.of(
            Tie.THEN,
            Tie.AFTER,
            Tie.BETWEEN,
            Tie.THEY,
            Tie.EACH,
            Tie.BOTH,
            Tie.FROM,
            Tie.TO,
            Tie.AGAIN,
            Tie.START,
            Tie.END,
            Tie.WHAT,
            Tie.LIKE,
            Tie.SAME,
            Tie.DIFFERENT,
            Tie.HIGH,
            Tie.LOW,
            Tie.SLOW);

    /** What may come behind the notes that were counted. */
    private static final Set<Tie> BEHIND = Set.of(Tie.COMMA, Tie.STOP, Tie.IN, Tie.SUM, Tie.COLON, Tie.AND);

    private final Stage stage;

    Amounts(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean some = said.units().stream()
                .anyMatch(unit -> unit instanceof Constituent.Small small && OF_SOME.contains(small.tie()));
        boolean one = said.scope().extent() == Scope.Extent.SAID
                && said.scope().time().isEmpty()
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0));
        var count = said.only(Constituent.Count.class);
        boolean bare = Descriptions.of(said.units(), stage).isEmpty()
                && said.all(Constituent.Rank.class).isEmpty();
        if (some || !one || count.isEmpty() || !bare || Reserve.isIn(said) || !isOfNotes(said, count.get())) {
            return Optional.empty();
        }
        var notes = stage.notes(said.bars().get(0));
        var pitched = notes.stream().filter(at -> !at.note().isDead()).toList();
        int many = count.get().many();
        boolean right = onsets(notes) == many || onsets(pitched) == many || notes.size() == many;
        return right ? Optional.empty() : Optional.of(Judged.wrong(new Right.CountThere(onsets(notes)), List.of()));
    }

    private static boolean isOfNotes(PlacedClause said, Constituent.Count count) {
        int noun = said.units().indexOf(count) + 1;
        boolean notes =
                noun < said.units().size() && PlacedClause.is(said.units().get(noun), Tie.NOTE);
        boolean ends = noun + 1 >= said.units().size()
                || said.units().get(noun + 1) instanceof Constituent.Small small && BEHIND.contains(small.tie());
        return notes && ends && said.hasAny(Tie.HAVE, Tie.BE, Tie.PLAY, Tie.WE);
    }

    private static int onsets(List<At> notes) {
        return (int) notes.stream().map(At::position).distinct().count();
    }
}
