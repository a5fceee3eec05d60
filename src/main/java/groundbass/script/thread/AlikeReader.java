package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Notes that were spoken of and are alike: "those two are the same note", "both on the same string". */
final class AlikeReader implements Reader {
    private static final Set<Tie> IDLE = Set.of(
            Tie.THEY,
            Tie.BOTH,
            Tie.ALL,
            Tie.BE,
            Tie.SAME,
            Tie.NOTE,
            Tie.STRING,
            Tie.FRET,
            Tie.ON,
            Tie.AT,
            Tie.IN,
            Tie.OF,
            Tie.COMMA,
            Tie.AND,
            Tie.SO,
            Tie.PLAY,
            Tie.WE,
            Tie.STOP,
            Tie.COLON);

    private final Stage stage;

    AlikeReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var notes = said.memory().notes();
        boolean here = !said.scope().isSaid() && said.scope().time().isEmpty();
        boolean several = said.hasAny(Tie.THEY, Tie.BOTH, Tie.ALL) && notes.size() > 1;
        var trait = trait(said);
        boolean others = said.units().stream()
                .dropWhile(unit -> !PlacedClause.is(unit, Tie.SAME))
                .anyMatch(Constituent.Count.class::isInstance); // "the same two notes": as others
        if (!here || !several || others || !said.has(Tie.SAME) || trait.isEmpty()) {
            return Optional.empty();
        }
        var rest = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            boolean number = unit instanceof Constituent.Number many && many.value() == notes.size()
                    || unit instanceof Constituent.Count some && some.many() == notes.size();
            if (!number && !(unit instanceof Constituent.Small small && IDLE.contains(small.tie()))) {
                rest.add(unit);
            }
        }
        var item = rest.isEmpty() ? Optional.of(Item.NOTHING) : one(rest);
        return item.map(one -> judged(notes, trait.get(), one));
    }

    private Optional<Item> one(List<Constituent> units) {
        return Items.of(units, stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !items.get(0).rest())
                .map(items -> items.get(0));
    }

    private Optional<Function<At, Object>> trait(PlacedClause said) {
        if (said.has(Tie.STRING)) {
            return Optional.of(at -> at.note().string());
        }
        if (said.has(Tie.FRET)) {
            return Optional.of(Stage::fret);
        }
        return said.has(Tie.NOTE) ? Optional.of(stage::midi) : Optional.empty();
    }

    private Judged judged(List<At> notes, Function<At, Object> trait, Item item) {
        boolean same = notes.stream().map(trait).distinct().count() == 1;
        var other = notes.stream().filter(at -> !item.fits(at)).findFirst();
        return other.map(at -> Judged.wrong(Wrongs.note(at, item, stage), notes))
                .orElseGet(() -> Judged.of(same, new Right.NotAlike(), notes));
    }
}
