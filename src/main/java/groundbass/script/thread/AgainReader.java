package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.List;
import java.util.Optional;

/** When the note that was spoken of comes again: "you hit it again on beat two". */
final class AgainReader implements Reader {
    private final Stage stage;

    AgainReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var notes = said.memory().notes();
        boolean plain = said.has(Tie.AGAIN)
                && said.hasAny(Tie.IT, Tie.THAT)
                && said.has(Tie.PLAY)
                && said.units().stream().allMatch(Constituent.Small.class::isInstance)
                && !said.hasAny(
                        Tie.NOT,
                        Tie.NO,
                        Tie.MAYBE,
                        Tie.SAME,
                        Tie.LIKE,
                        Tie.OTHER,
                        Tie.BAR,
                        Tie.CHORD,
                        Tie.UP,
                        Tie.DOWN,
                        Tie.BEFORE,
                        Tie.AFTER,
                        Tie.RHYTHM);
        boolean timed = said.scope().time().isPresent() && said.bars().size() == 1;
        boolean one = notes.size() == 1
                && said.memory().sure()
                && stage.midi(notes.get(0)).isPresent();
        if (!plain || !timed || !one || !stage.timeline().has(said.bars().get(0))) {
            return Optional.empty();
        }
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        return stretches.size() == 1 ? Optional.of(judged(notes.get(0), said, stretches.get(0))) : Optional.empty();
    }

    private Judged judged(At before, PlacedClause said, Stretch stretch) {
        var midi = stage.midi(before);
        var there = stage.notes(List.of(stretch));
        var first = there.stream()
                .filter(at -> at.note().onset().equals(stretch.from()))
                .toList();
        if (first.stream().anyMatch(at -> stage.midi(at).equals(midi))) {
            return Judged.agrees(first);
        }
        boolean later = there.stream().anyMatch(at -> stage.midi(at).equals(midi));
        boolean moment = said.scope().time().get() instanceof Scope.Parts || later && first.isEmpty();
        var same =
                new Item(List.of(new Part(Part.Kind.NAME, at -> stage.midi(at).equals(midi))), false, Optional.empty());
        return later && !moment ? Judged.mixed(there) : Judged.wrong(Wrongs.start(stretch, same, stage), there);
    }
}
