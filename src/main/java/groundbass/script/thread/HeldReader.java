package groundbass.script.thread;

import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.List;
import java.util.Optional;

/** Contradicts that something is held where nothing sounds: "on four you let it ring". */
final class HeldReader implements Reader {
    private final Stage stage;

    HeldReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean told = said.has(Tie.HOLD)
                && said.scope().time().isPresent()
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0))
                && !said.has(Constituent.Silence.class)
                && !said.has(Constituent.Short.class)
                && !said.hasAny(
                        Tie.NOT, Tie.NO, Tie.MAYBE, Tie.EXCEPT, Tie.BEFORE, Tie.LIKE, Tie.SAME, Tie.TO, Tie.FROM);
        var stretches = told
                ? stage.stretches(
                        said.bars(), said.scope().time(), said.memory().beat())
                : List.<Stretch>of();
        boolean begins = said.units().stream().noneMatch(unit -> PlacedClause.is(unit, Tie.OTHER))
                || PlacedClause.is(said.units().get(0), Tie.WE);
        boolean silent = stretches.size() == 1
                && stage.notes(stretches).isEmpty()
                && stage.timeline()
                        .isSilent(stretches.get(0).bar(), stretches.get(0).from());
        return silent && begins && said.has(Tie.WE)
                ? Optional.of(Judged.wrong(Wrongs.start(stretches.get(0), Item.NOTHING, stage), List.of()))
                : Optional.empty();
    }
}
