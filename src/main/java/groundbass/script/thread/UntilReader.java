package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Subject;
import groundbass.script.thread.stage.Wrongs;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How long a note that was spoken of sounds: "it rings until beat three". */
final class UntilReader implements Reader {
    private static final Set<Tie> TIES = Set.of(
            Tie.HOLD, Tie.OTHER, Tie.IT, Tie.THAT, Tie.ONE, Tie.NOTE, Tie.ON, Tie.WE, Tie.SO, Tie.AND, Tie.STOP,
            Tie.COMMA, Tie.AGAIN, Tie.LOW, Tie.HIGH);

    private final Stage stage;

    UntilReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        int last = said.units().size() - 1;
        boolean until = last > 0
                && said.has(Tie.HOLD)
                && said.scope().time().isPresent()
                && said.bars().size() == 1
                && said.units().stream()
                                .filter(unit -> PlacedClause.is(unit, Tie.OTHER))
                                .count()
                        == 1
                && PlacedClause.is(withoutStop(said.units()), Tie.OTHER);
        if (!until || !said.isOnly(Set.of(Constituent.Name.class), TIES)) {
            return Optional.empty();
        }
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        var anywhere = said.in(new Scope(said.scope().bars(), said.scope().extent(), Optional.empty()));
        var what = said.units().stream()
                .filter(unit -> unit instanceof Constituent.Name
                        || PlacedClause.is(unit, Tie.IT)
                        || PlacedClause.is(unit, Tie.THAT)
                        || PlacedClause.is(unit, Tie.ONE))
                .toList();
        return Subject.of(what, anywhere, stage)
                .map(Subject::notes)
                .filter(notes -> notes.size() == 1 && !stretches.isEmpty())
                .map(notes -> judged(
                        notes.get(0), stretches.get(0).from(), stretches.get(0).to()));
    }

    private static Constituent withoutStop(List<Constituent> units) {
        int last = units.size() - 1;
        return PlacedClause.is(units.get(last), Tie.STOP) ? units.get(last - 1) : units.get(last);
    }

    /** Up to a beat may mean through it. */
    private Judged judged(At at, Fraction from, Fraction to) {
        var end = at.note().end();
        if (end.equals(to)) {
            return Judged.open(List.of(at));
        }
        var length = Item.NOTHING.with(new Part(Part.Kind.LENGTH, note -> false));
        return Judged.of(end.equals(from), Wrongs.note(at, length, stage), List.of(at));
    }
}
