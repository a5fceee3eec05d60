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
import java.util.Set;

/**
 * When the note that was spoken of begins, or comes again: "it lands on beat three", "you arrive with it on the and of
 * two", "you hit it again on beat two".
 */
final class WhenReader implements Reader {
    /** Words with which another note is meant, or another thing than when one begins. */
    private static final Set<Tie> OTHERWISE = Set.of(
            Tie.NOT,
            Tie.NO,
            Tie.MAYBE,
            Tie.OVER,
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

    private static final Set<Tie> OF_A_WAY = Set.of(Tie.TO, Tie.FROM, Tie.EACH, Tie.BOTH, Tie.HOLD, Tie.START, Tie.END);

    private final Stage stage;

    WhenReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean again = said.has(Tie.AGAIN);
        boolean subject = again ? said.hasAny(Tie.IT, Tie.THAT) : said.hasAny(Tie.IT, Tie.ONE);
        boolean verb = again ? said.has(Tie.PLAY) : said.hasAny(Tie.PLAY, Tie.FALL) && !said.hasAny(OF_A_WAY);
        boolean plain = said.units().stream().allMatch(Constituent.Small.class::isInstance);
        boolean timed = said.scope().time().isPresent()
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0));
        var stretches = subject && verb && plain && timed && !said.hasAny(OTHERWISE)
                ? stage.stretches(
                        said.bars(), said.scope().time(), said.memory().beat())
                : List.<Stretch>of();
        if (stretches.size() != 1) {
            return Optional.empty();
        }
        var stretch = stretches.get(0);
        return one(said, again)
                .map(at -> again ? again(at, said, stretch) : once(at, stretch))
                .or(() -> nothing(stretch));
    }

    /** The only note that can be meant. */
    private Optional<At> one(PlacedClause said, boolean again) {
        return said.memory().notes().stream()
                .filter(at -> said.memory().notes().size() == 1 && said.memory().sure())
                .filter(at -> again || said.has(Tie.IT) && said.bars().contains(at.bar()))
                .filter(at -> stage.midi(at).isPresent() || !again)
                .findFirst();
    }

    private Judged once(At at, Stretch stretch) {
        var meant = List.of(at);
        if (at.note().onset().equals(stretch.from())) {
            return Judged.agrees(meant);
        }
        boolean another = stage.notes(List.of(stretch)).stream()
                .anyMatch(other -> other.note().onset().equals(stretch.from())
                        && stage.midi(at).equals(stage.midi(other)));
        return another ? Judged.open(meant) : Judged.wrong(Wrongs.note(at, Item.NOTHING, stage), meant);
    }

    private Judged again(At before, PlacedClause said, Stretch stretch) {
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

    /** Whatever "it" is: where a note is still held nothing begins. */
    private Optional<Judged> nothing(Stretch stretch) {
        boolean begins = stage.notes(List.of(stretch)).stream()
                .anyMatch(at -> at.note().onset().equals(stretch.from()));
        boolean silent = stage.timeline().isSilent(stretch.bar(), stretch.from());
        return begins || silent
                ? Optional.empty()
                : Optional.of(Judged.wrong(Wrongs.start(stretch, Item.NOTHING, stage), List.of()));
    }
}
