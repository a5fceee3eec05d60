package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** How many strings are played: "we only use three strings". */
final class StringsReader implements Reader {
    private final Stage stage;

    StringsReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var strings = said.only(Constituent.StringCount.class);
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small || unit instanceof Constituent.StringCount);
        boolean played = said.has(Tie.PLAY)
                && !said.hasAny(Tie.BASS, Tie.HAVE, Tie.NOT, Tie.NO, Tie.UP, Tie.DOWN, Tie.OVER, Tie.TO);
        if (strings.filter(count -> !count.instrument()).isEmpty()
                || !plain
                || !played
                || said.scope().time().isPresent()) {
            return Optional.empty();
        }
        int here = played(said.bars().isEmpty() ? stage.allBars() : said.bars());
        int everywhere = said.scope().isSaid() ? here : played(stage.allBars());
        int many = strings.get().strings();
        if ((here == many) != (everywhere == many)) {
            return Optional.of(Judged.mixed(List.of()));
        }
        return Optional.of(Judged.of(here == many, new Right.CountThere(here), List.of()));
    }

    private int played(List<Integer> bars) {
        return (int) stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                .map(At::note)
                .mapToInt(note -> note.string())
                .distinct()
                .count();
    }
}
