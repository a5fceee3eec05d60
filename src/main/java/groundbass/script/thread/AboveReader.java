package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Sides;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Subject;
import groundbass.theory.Degree;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How far a note lies above or below one that came before it: "it's a minor third above the G before it". */
final class AboveReader implements Reader {
    private static final int OCTAVE = 12;
    private static final Set<Tie> UPWARD = Set.of(Tie.ABOVE, Tie.UP, Tie.HIGH, Tie.OVER);
    private static final Set<Tie> DOWNWARD = Set.of(Tie.BELOW, Tie.DOWN, Tie.LOW);

    /** Words that tie what lies above to what it lies above. */
    private static final Set<Tie> IDLE = Set.of(
            Tie.OTHER,
            Tie.FROM,
            Tie.IT,
            Tie.THAT,
            Tie.NOTE,
            Tie.ONE,
            Tie.BEFORE,
            Tie.COMMA,
            Tie.STOP,
            Tie.ABOVE,
            Tie.BELOW,
            Tie.UP,
            Tie.DOWN,
            Tie.HIGH,
            Tie.LOW,
            Tie.OVER,
            Tie.THERE,
            Tie.WE,
            Tie.BE,
            Tie.IN);

    private final Stage stage;

    AboveReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        int far = far(said.units());
        int verb = Sides.verb(said.units());
        boolean way = has(said, UPWARD) != has(said, DOWNWARD);
        boolean plain =
                far > 0 && verb >= 0 && verb < far && said.scope().time().isEmpty();
        if (!way || !plain || said.hasAny(Tie.NOT, Tie.NO, Tie.SAME, Tie.MAYBE)) {
            return Optional.empty();
        }
        var behind = said.units().subList(far + 1, said.units().size());
        var of = behind.stream()
                .filter(unit -> !(unit instanceof Constituent.Small small && IDLE.contains(small.tie())))
                .toList();
        boolean before = behind.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.BEFORE));
        if (of.isEmpty() && !before) {
            return Optional.empty();
        }
        var left = said.units().subList(0, verb);
        boolean named = left.stream().anyMatch(unit -> !(unit instanceof Constituent.Small));
        return Subject.of(left, said, stage)
                .map(Subject::notes)
                .filter(notes -> notes.size() == 1 && (named || said.memory().sure()))
                .flatMap(notes -> judged(notes.get(0), lower(notes.get(0), of, before), said, far));
    }

    private static int far(List<Constituent> units) {
        int far = -1;
        for (int i = 0; i < units.size(); i++) {
            boolean here = units.get(i) instanceof Constituent.Interval || units.get(i) instanceof Constituent.Octaves;
            if (here && far >= 0) {
                return -1;
            }
            far = here ? i : far;
        }
        return far;
    }

    private static boolean has(PlacedClause said, Set<Tie> ties) {
        return ties.stream().anyMatch(said::has);
    }

    /** The notes that it may be compared with; the one right before it, where that was said. */
    private List<At> lower(At at, List<Constituent> of, boolean before) {
        var earlier = stage
                .notes(stage.allBars().stream()
                        .filter(bar -> bar == at.bar() || bar == at.bar() - 1)
                        .flatMap(bar -> List.of(stage.timeline().whole(bar)).stream())
                        .toList())
                .stream()
                .filter(other -> other.bar() < at.bar()
                        || other.note().onset().isBefore(at.note().onset()))
                .filter(other -> stage.midi(other).isPresent())
                .toList();
        if (of.isEmpty()) {
            return earlier.isEmpty() ? List.of() : List.of(earlier.get(earlier.size() - 1));
        }
        var rank = of.stream()
                .filter(Constituent.Rank.class::isInstance)
                .map(Constituent.Rank.class::cast)
                .findFirst();
        var what =
                of.stream().filter(unit -> !(unit instanceof Constituent.Rank)).toList();
        var fitting = Items.of(what, stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1)
                .map(items -> earlier.stream().filter(items.get(0)::fits).toList())
                .orElse(List.of());
        if (rank.isPresent()) { // "above the first G" of the bar
            boolean nth = rank.get().which() == Constituent.Rank.Which.NTH;
            return fitting.stream()
                    .filter(other -> nth && other.bar() == at.bar())
                    .skip(rank.get().nth() - 1L)
                    .limit(1)
                    .toList();
        }
        return before && !fitting.isEmpty() ? List.of(fitting.get(fitting.size() - 1)) : fitting;
    }

    private Optional<Judged> judged(At at, List<At> lower, PlacedClause said, int far) {
        var steps = lower.stream()
                .flatMap(other ->
                        stage.midi(at).map(midi -> midi - stage.midi(other).orElseThrow()).stream())
                .distinct()
                .toList();
        if (steps.isEmpty()) {
            return Optional.empty();
        }
        boolean some = steps.stream().anyMatch(step -> fits(said.units().get(far), step, has(said, UPWARD)));
        boolean all = steps.stream().allMatch(step -> fits(said.units().get(far), step, has(said, UPWARD)));
        var notes = List.of(at);
        return Optional.of(
                some && !all ? Judged.mixed(notes) : Judged.of(all, new Right.StepThere(steps.get(0)), notes));
    }

    /** A step whose size was not said may be the small one or the large; more than an octave is called by its rest. */
    private static boolean fits(Constituent said, int step, boolean upward) {
        int up = upward ? step : -step;
        if (said instanceof Constituent.Octaves octaves) {
            return up == OCTAVE * octaves.many();
        }
        var interval = (Constituent.Interval) said;
        int rest = up > OCTAVE ? up % OCTAVE : up;
        if (interval.semitones().isPresent()) {
            return rest == interval.semitones().getAsInt();
        }
        int major = Degree.parse(String.valueOf(interval.number())).semitones();
        return rest == major || rest == major - 1;
    }
}
