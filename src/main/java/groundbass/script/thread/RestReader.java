package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Counts;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Together;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How long rests are that were spoken of: "the rest after it lasts an eighth". */
final class RestReader implements Reader {
    private static final Set<Class<? extends Constituent>> KINDS =
            Set.of(Constituent.Silence.class, Constituent.Value.class, Constituent.Lasting.class);
    private static final Set<Tie> TIES = Set.of(
            Tie.BE, Tie.HOLD, Tie.AFTER, Tie.THAT, Tie.IT, Tie.ON, Tie.IN, Tie.THERE, Tie.FOR, Tie.ONLY, Tie.SO,
            Tie.AND, Tie.COMMA, Tie.STOP, Tie.LONG, Tie.BUT, Tie.OF, Tie.WE, Tie.THEN);

    private final Stage stage;

    RestReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean subject = !said.units().isEmpty()
                && said.units().stream()
                        .filter(unit -> !(unit instanceof Constituent.Small))
                        .findFirst()
                        .filter(Constituent.Silence.class::isInstance)
                        .isPresent();
        var silence = said.only(Constituent.Silence.class)
                .filter(rest -> rest.length().isEmpty());
        boolean told = said.hasAny(Tie.BE, Tie.HOLD, Tie.WE) && said.isOnly(KINDS, TIES);
        boolean known =
                said.bars().size() == 1 && stage.timeline().has(said.bars().get(0));
        boolean one = said.all(Constituent.Value.class).size()
                        + said.all(Constituent.Lasting.class).size()
                == 1;
        if (!subject || silence.isEmpty() || !told || !known || !one) {
            return Optional.empty();
        }
        var rests = rests(said);
        var findings = rests.stream().map(rest -> isSo(rest, said)).toList();
        if (findings.isEmpty()) {
            return Optional.empty();
        }
        boolean some = findings.contains(true);
        boolean all = !findings.contains(false);
        var first = rests.get(0);
        return Optional.of(
                some && !all
                        ? Judged.mixed(List.of())
                        : Judged.of(
                                all,
                                new Right.RestLength(
                                        new Position(first.bar(), first.from()),
                                        Counts.of(stage.timeline(), first.bar(), first.from()),
                                        length(first)),
                                List.of()));
    }

    /** Those that may be meant: at the time that was said, after the note that was spoken of, or all of the bar. */
    private List<Together> rests(PlacedClause said) {
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        var notes = said.memory().notes();
        boolean after = said.has(Tie.AFTER) && said.scope().time().isEmpty() && !notes.isEmpty();
        var rests = stage.events(stretches).stream()
                .filter(Together::isRest)
                .filter(rest -> !after || isAfter(rest, notes.get(notes.size() - 1)))
                .toList();
        return after && rests.size() > 1 ? rests.subList(0, 1) : rests;
    }

    private static boolean isAfter(Together rest, At note) {
        return rest.bar() == note.bar() && rest.from().isAfter(note.note().onset());
    }

    /** A rest lasts as long as it is silent, or as one of the signs with which it is written. */
    private boolean isSo(Together rest, PlacedClause said) {
        var meter = stage.timeline().at(rest.bar()).meter();
        var whole = stage.timeline().whole(rest.bar());
        var values = said.only(Constituent.Value.class).map(value -> List.of(value.length()));
        var lengths = values.or(() -> said.only(Constituent.Lasting.class)
                        .map(lasting -> lasting.ofBar()
                                ? List.of(whole.to().minus(whole.from()).times(lasting.amount()))
                                : List.of(
                                        meter.count().times(lasting.amount()),
                                        meter.pulse().times(lasting.amount()))))
                .orElseThrow();
        return lengths.stream()
                .anyMatch(length -> length.equals(length(rest))
                        || stage.timeline().isWrittenRest(new Position(rest.bar(), rest.from()), length));
    }

    private static Fraction length(Together rest) {
        return rest.to().minus(rest.from());
    }
}
