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
import java.util.Set;

/** How often the note that was spoken of comes: "it's in this bar twice", "it comes three times in a row". */
final class TimesReader implements Reader {
    private static final int OCTAVE = 12;
    private static final Set<Tie> IDLE = Set.of(
            Tie.IT, Tie.BE, Tie.PLAY, Tie.WE, Tie.IN, Tie.THERE, Tie.COMMA, Tie.STOP, Tie.SO, Tie.AND, Tie.ONLY,
            Tie.HAVE);

    private final Stage stage;

    TimesReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var times = said.only(Constituent.Times.class);
        boolean plain = said.has(Tie.IT)
                && said.hasAny(Tie.BE, Tie.PLAY)
                && said.units().stream()
                        .allMatch(unit -> unit instanceof Constituent.Times
                                || unit instanceof Constituent.Small small && IDLE.contains(small.tie()));
        var notes = said.memory().notes();
        boolean one = notes.stream().map(stage::midi).distinct().count() == 1
                && said.bars().size() == 1
                && said.scope().time().isEmpty()
                && said.bars().contains(notes.get(0).bar());
        if (times.isEmpty() || !plain || !one || stage.midi(notes.get(0)).isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(judged(notes.get(0), times.get().many(), said));
    }

    /** As often as that pitch comes in the bar, or its name does, or it is struck before another note comes. */
    private Judged judged(At at, int many, PlacedClause said) {
        int midi = stage.midi(at).orElseThrow();
        var bar = stage.notes(at.bar());
        var pitch = bar.stream()
                .filter(other ->
                        stage.midi(other).filter(there -> there == midi).isPresent())
                .toList();
        long name = bar.stream()
                .filter(other -> stage.midi(other)
                        .filter(there -> (there - midi) % OCTAVE == 0)
                        .isPresent())
                .count();
        long row = bar.stream()
                .dropWhile(other -> !other.equals(at))
                .takeWhile(pitch::contains)
                .count();
        boolean right = pitch.size() == many || name == many;
        boolean local = row == many && !said.scope().isSaid();
        boolean sure = said.memory().sure();
        return right || sure && !local
                ? Judged.of(right, new Right.CountThere(pitch.size()), pitch)
                : Judged.open(List.of(at));
    }
}
