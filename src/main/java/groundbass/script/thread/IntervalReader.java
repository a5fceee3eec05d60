package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Arrivals;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.theory.Degree;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** How far two notes are apart: by their names, which is a matter of theory alone, or by the notes last spoken of. */
final class IntervalReader implements Reader {
    private static final Set<Class<? extends Constituent>> NAMED =
            Set.of(Constituent.Name.class, Constituent.Interval.class);
    private static final Set<Tie> TIES = Set.of(
            Tie.BE,
            Tie.FROM,
            Tie.OF,
            Tie.TO,
            Tie.UP,
            Tie.DOWN,
            Tie.ABOVE,
            Tie.BELOW,
            Tie.IT,
            Tie.BETWEEN,
            Tie.AND,
            Tie.PLAY,
            Tie.THAT,
            Tie.COMMA,
            Tie.STOP,
            Tie.APART,
            Tie.IN,
            Tie.SO,
            Tie.ONLY,
            Tie.WE,
            Tie.HAVE,
            Tie.THERE,
            Tie.NOTE,
            Tie.CLIMB,
            Tie.FALL,
            Tie.AGAIN);

    private final Stage stage;

    IntervalReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var interval = said.only(Constituent.Interval.class);
        if (interval.isEmpty() || said.hasAny(Tie.NOT, Tie.NO)) {
            return Optional.empty();
        }
        var names = said.all(Constituent.Name.class);
        if (names.size() == 2 && said.isOnly(NAMED, TIES)) {
            return Optional.of(named(names.get(0).name(), names.get(1).name(), interval.get(), said));
        }
        if (names.size() == 1 && said.isOnly(NAMED, TIES)) {
            return fromHere(interval.get(), names.get(0).name(), said);
        }
        return names.isEmpty() ? ofNotes(interval.get(), said) : Optional.empty();
    }

    /** "A third above that is E": from the one note that was spoken of last. */
    private Optional<Judged> fromHere(Constituent.Interval said, NoteName name, PlacedClause clause) {
        boolean up = clause.hasAny(Tie.ABOVE, Tie.UP);
        boolean down = clause.hasAny(Tie.BELOW, Tie.DOWN);
        var notes = clause.memory().notes();
        boolean onward = clause.has(Tie.FROM) && clause.has(Tie.TO) && clause.hasAny(Tie.THERE, Tie.THAT, Tie.IT);
        boolean told = up != down && (clause.has(Tie.BE) && clause.hasAny(Tie.THAT, Tie.IT) || onward);
        if (!told
                || said.semitones().isEmpty()
                || notes.size() != 1
                || !clause.memory().sure()) {
            return Optional.empty();
        }
        int steps = up ? said.semitones().getAsInt() : -said.semitones().getAsInt();
        return stage.midi(notes.get(0))
                .map(midi -> Math.floorMod(name.pitchClass() - midi, 12))
                .map(there -> Judged.of(
                        Math.floorMod(steps, 12) == there, new Right.StepThere(up ? there : there - 12), List.of()));
    }

    /** What a distance between two names comes to. */
    static Judged named(NoteName one, NoteName other, Constituent.Interval said, PlacedClause clause) {
        int up = Math.floorMod(other.pitchClass() - one.pitchClass(), 12);
        int letters = Math.floorMod(other.letter().ordinal() - one.letter().ordinal(), 7) + 1;
        boolean path = clause.has(Tie.FROM) || clause.has(Tie.TO);
        boolean either =
                clause.hasAny(Tie.UP, Tie.CLIMB) && clause.hasAny(Tie.DOWN, Tie.FALL); // "comes down higher up"
        boolean upward = path && !either && clause.hasAny(Tie.UP, Tie.CLIMB);
        boolean downward = path && !either && clause.hasAny(Tie.DOWN, Tie.FALL) || !path && clause.has(Tie.ABOVE);
        boolean right = said.semitones().isPresent()
                ? fits(said.semitones().getAsInt(), up, upward, downward)
                : fitsLetters(said.number(), letters, upward, downward);
        int shown = downward ? -Math.floorMod(-up, 12) : upward || up <= 6 ? up : up - 12;
        return Judged.of(right, new Right.StepThere(shown), List.of());
    }

    private static boolean fits(int said, int up, boolean upward, boolean downward) {
        int down = Math.floorMod(-up, 12);
        return !downward && said == up || !upward && said == down;
    }

    private static boolean fitsLetters(int said, int up, boolean upward, boolean downward) {
        int down = up == 1 ? 1 : 9 - up;
        return !downward && said == up || !upward && said == down;
    }

    /** "Those two are a fourth apart"; "the slide is a half step". */
    private Optional<Judged> ofNotes(Constituent.Interval said, PlacedClause clause) {
        var findings = pairs(clause).stream()
                .flatMap(notes -> distance(notes.get(0), notes.get(1))
                        .map(semitones -> Judged.of(isSo(said, semitones), new Right.StepThere(semitones), notes))
                        .stream())
                .toList();
        boolean some = findings.stream().anyMatch(Judged::agrees);
        boolean all = findings.stream().allMatch(Judged::agrees);
        return some && !all
                ? Optional.of(Judged.mixed(List.of()))
                : findings.stream().findFirst();
    }

    /** A step whose size was not said may be the small one or the large. */
    private static boolean isSo(Constituent.Interval said, int semitones) {
        int there = Math.floorMod(Math.abs(semitones), 12);
        if (said.semitones().isPresent()) {
            return there == said.semitones().getAsInt();
        }
        int major = Degree.parse(String.valueOf(said.number())).semitones();
        return there == major || there == major - 1;
    }

    private Optional<Integer> distance(At one, At other) {
        return stage.midi(one).flatMap(from -> stage.midi(other).map(to -> to - from));
    }

    private List<At> arrivals(Manner manner, List<Integer> bars) {
        return stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                .filter(at -> Part.manner(manner).fits(at))
                .toList();
    }

    /** The pairs of notes that may be meant. */
    private List<List<At>> pairs(PlacedClause clause) {
        var manner = clause.only(Constituent.Played.class);
        boolean plain = clause.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small
                        || unit instanceof Constituent.Interval
                        || unit instanceof Constituent.Number
                        || unit instanceof Constituent.Count
                        || unit instanceof Constituent.Played);
        if (!plain) {
            return List.of();
        }
        if (clause.scope().time().isPresent()) {
            return fromThat(clause).stream().toList();
        }
        if (manner.isPresent()) {
            var here = arrivals(manner.get().manner(), clause.bars());
            var arrivals = here.isEmpty() ? arrivals(manner.get().manner(), stage.allBars()) : here;
            return arrivals.stream()
                    .flatMap(
                            arrival -> Arrivals.source(arrival, stage).map(source -> List.of(source, arrival)).stream())
                    .toList();
        }
        boolean refers = clause.has(Tie.THEY) || clause.has(Tie.BOTH) || clause.has(Tie.THAT) || clause.has(Tie.IT);
        var notes = clause.memory().notes();
        boolean it = clause.hasAny(Tie.IT, Tie.THAT) && !clause.hasAny(Tie.THEY, Tie.BOTH);
        if (it
                && notes.size() == 1
                && !clause.scope().isSaid()
                && notes.get(0).note().arrival().isPresent()) {
            return Arrivals.source(notes.get(0), stage) // "the slide to the A: it's a whole step"
                    .map(source -> List.of(List.of(source, notes.get(0))))
                    .orElse(List.of());
        }
        return refers && notes.size() == 2 && !clause.scope().isSaid() ? List.of(notes) : List.of();
    }

    /** "You jump up a fifth to beat two": from the note right before it. */
    private Optional<List<At>> jumped(PlacedClause clause) {
        var stretches = stage.stretches(
                clause.bars(), clause.scope().time(), clause.memory().beat());
        var pitched = stage.everyNote().stream()
                .filter(at -> stage.midi(at).isPresent())
                .toList();
        return stretches.size() == 1
                ? stage.notes(stretches).stream()
                        .filter(at -> at.note().onset().equals(stretches.get(0).from()))
                        .filter(at -> pitched.indexOf(at) > 0)
                        .findFirst()
                        .map(at -> List.of(pitched.get(pitched.indexOf(at) - 1), at))
                : Optional.empty();
    }

    /** "From that you jump a fifth to beat two": from the one note that was spoken of last to the first of a time. */
    private Optional<List<At>> fromThat(PlacedClause clause) {
        var notes = clause.memory().notes();
        boolean way = clause.has(Tie.WE) && clause.has(Tie.PLAY) && clause.has(Tie.UP) != clause.has(Tie.DOWN);
        if (way && !clause.has(Tie.FROM) && clause.bars().size() == 1) {
            return jumped(clause);
        }
        boolean from = clause.has(Tie.FROM) && clause.hasAny(Tie.THAT, Tie.IT, Tie.THERE) && notes.size() == 1;
        var stretches = from && clause.bars().size() == 1 && clause.memory().sure()
                ? stage.stretches(
                        clause.bars(), clause.scope().time(), clause.memory().beat())
                : List.<Stretch>of();
        return stretches.size() == 1
                ? stage.notes(stretches).stream()
                        .filter(at -> at.note().onset().equals(stretches.get(0).from()))
                        .findFirst()
                        .map(at -> List.of(notes.get(0), at))
                : Optional.empty();
    }
}
