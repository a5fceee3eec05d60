package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;

/** What comes after the note that was spoken of, up or down from it: "then down to the F sharp". Both are spoken of then. */
final class OnwardReader implements Reader {
    private final Stage stage;

    OnwardReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var notes = said.memory().notes();
        boolean here = !said.scope().isSaid() && said.scope().time().isEmpty() && notes.size() == 1;
        boolean way = said.has(Tie.TO) && said.has(Tie.UP) != said.has(Tie.DOWN);
        boolean otherwise = said.hasAny(
                Tie.NOT, Tie.NO, Tie.FROM, Tie.MAYBE, Tie.SAME, Tie.OTHER, Tie.AFTER, Tie.AND, Tie.BE, Tie.HAVE);
        boolean one = said.units().stream()
                                .filter(unit -> !(unit instanceof Constituent.Small))
                                .count()
                        == 1
                && said.has(Constituent.Name.class);
        if (!here || !way || otherwise || !one) {
            return Optional.empty();
        }
        int to = said.units().indexOf(new Constituent.Small(Tie.TO));
        return Items.of(said.units().subList(to + 1, said.units().size()), stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1)
                .flatMap(items -> next(notes.get(0), items.get(0)))
                .map(next -> judged(notes.get(0), next, said));
    }

    /** The first that is so and comes later, in this bar or the next. */
    private Optional<At> next(At from, Item item) {
        return stage.everyNote().stream()
                .filter(at -> at.bar() == from.bar()
                                && at.note().onset().isAfter(from.note().onset())
                        || at.bar() == from.bar() + 1)
                .filter(item::fits)
                .findFirst();
    }

    private Judged judged(At from, At to, PlacedClause said) {
        var pitched = stage.everyNote().stream()
                .filter(at -> stage.midi(at).isPresent())
                .toList();
        boolean next = pitched.indexOf(to) == pitched.indexOf(from) + 1;
        boolean way = stage.midi(from)
                .flatMap(one -> stage.midi(to).map(other -> said.has(Tie.UP) ? other > one : other < one))
                .orElse(false);
        var both = List.of(from, to);
        return next && way && said.memory().sure() ? Judged.agrees(both) : Judged.open(both);
    }
}
