package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** How far it is from one note of the line to another: "from the first note to the last it is an octave". */
final class EndsReader implements Reader {
    private static final int OCTAVE = 12;
    private static final Set<Tie> IDLE = Set.of(
            Tie.BE, Tie.IT, Tie.THAT, Tie.WE, Tie.HAVE, Tie.PLAY, Tie.NOTE, Tie.ONE, Tie.UP, Tie.DOWN, Tie.COMMA,
            Tie.SO, Tie.AND, Tie.OF, Tie.ON, Tie.ONLY, Tie.THERE, Tie.FROM, Tie.TO, Tie.CLIMB, Tie.FALL);

    private final Stage stage;

    EndsReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var distance = distance(said);
        boolean path = said.hasAny(Tie.FROM, Tie.OF) && said.has(Tie.TO) && !said.hasAny(Tie.NOT, Tie.NO);
        boolean placed = said.has(Rank.class)
                || said.has(Constituent.Place.class)
                || said.has(Constituent.Played.class)
                || said.has(Constituent.Dead.class)
                || isPointed(said.units());
        if (path && distance.isPresent() && said.scope().time().isPresent()) {
            return between(distance.getAsInt(), said);
        }
        if (!path || !placed || distance.isEmpty()) {
            return Optional.empty();
        }
        int to = said.units().indexOf(new Constituent.Small(Tie.TO));
        var left = what(said.units().subList(0, to));
        var right = what(said.units().subList(to, said.units().size()));
        boolean shared =
                isRank(left) && right.size() > 1 && right.get(0) instanceof Rank; // "from the first to the last D"
        var first =
                shared ? ends(withRank(left, right), said) : end(said.units().subList(0, to), said);
        var last = end(said.units().subList(to, said.units().size()), said);
        return first.isEmpty() || last.isEmpty()
                ? Optional.empty()
                : Optional.of(judged(first, last, distance.getAsInt(), said));
    }

    /** "From there to the C", "from the G to that one": one end is what was spoken of last. */
    private static boolean isPointed(List<Constituent> units) {
        return IntStream.range(1, units.size())
                .anyMatch(i -> (PlacedClause.is(units.get(i), Tie.THERE) || PlacedClause.is(units.get(i), Tie.THAT))
                        && (PlacedClause.is(units.get(i - 1), Tie.FROM)
                                || PlacedClause.is(units.get(i - 1), Tie.OF)
                                || PlacedClause.is(units.get(i - 1), Tie.TO)));
    }

    private static boolean isRank(List<Constituent> units) {
        return units.size() == 1 && units.get(0) instanceof Rank;
    }

    private static List<Constituent> withRank(List<Constituent> rank, List<Constituent> ranked) {
        var units = new ArrayList<>(rank);
        units.addAll(ranked.subList(1, ranked.size()));
        return units;
    }

    private List<At> end(List<Constituent> units, PlacedClause said) {
        var what = what(units);
        boolean verb = isPointed(units)
                && what.stream().allMatch(Constituent.Played.class::isInstance); // "from there you hammer up"
        boolean pointed = (what.isEmpty() || verb) && said.memory().notes().size() == 1;
        return pointed ? said.memory().notes() : ends(what, said);
    }

    /** What an end is called. */
    static List<Constituent> what(List<Constituent> units) {
        return units.stream()
                .filter(unit -> !(unit instanceof Constituent.Small small && IDLE.contains(small.tie()))
                        && !(unit instanceof Constituent.Interval)
                        && !(unit instanceof Constituent.Octaves))
                .toList();
    }

    /** "From beat two to beat three it is a fourth". */
    private Optional<Judged> between(int distance, PlacedClause said) {
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small
                        || unit instanceof Constituent.Interval
                        || unit instanceof Constituent.Octaves);
        var beats = said.bars().size() == 1
                ? stage.stretches(
                        said.bars(), said.scope().time(), said.memory().beat())
                : List.<Stretch>of();
        if (!plain || beats.size() != 2) {
            return Optional.empty();
        }
        var first = pitched(beats.get(0));
        var last = pitched(beats.get(1));
        return first.isEmpty() || last.isEmpty() ? Optional.empty() : Optional.of(judged(first, last, distance, said));
    }

    private List<At> pitched(Stretch stretch) {
        return stage.notes(List.of(stretch)).stream()
                .filter(at -> stage.midi(at).isPresent())
                .toList();
    }

    static OptionalInt distance(PlacedClause said) {
        var octaves = said.only(Constituent.Octaves.class);
        var interval = said.only(Constituent.Interval.class);
        if (octaves.isPresent() == interval.isPresent()) {
            return OptionalInt.empty();
        }
        return octaves.isPresent()
                ? OptionalInt.of(OCTAVE * octaves.get().many())
                : interval.get().semitones();
    }

    /** The pitches that may be meant; none where that is not known. */
    List<At> ends(List<Constituent> units, PlacedClause said) {
        var bars = said.bars().isEmpty() ? stage.allBars() : said.bars();
        var notes = stage
                .notes(stage.stretches(bars, said.scope().time(), said.memory().beat()))
                .stream()
                .filter(at -> stage.midi(at).isPresent())
                .toList();
        var ranks = units.stream()
                .filter(Rank.class::isInstance)
                .map(Rank.class::cast)
                .toList();
        var what = units.stream().filter(unit -> !(unit instanceof Rank)).toList();
        var here = what.isEmpty() && ranks.size() == 1 ? notes : described(what, notes);
        return ranks.isEmpty()
                ? here
                : ranks.size() == 1 ? ranked(ranks.get(0), here).stream().toList() : List.of();
    }

    private List<At> described(List<Constituent> what, List<At> notes) {
        return (what.isEmpty() ? Optional.<Items.Row>empty() : Items.of(what, stage))
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !items.get(0).rest())
                .map(items -> notes.stream().filter(items.get(0)::fits).toList())
                .orElse(List.of());
    }

    private Optional<At> ranked(Rank rank, List<At> notes) {
        var byPitch = Comparator.<At>comparingInt(at -> stage.midi(at).orElseThrow());
        return switch (rank.which()) {
            case NTH -> notes.stream().skip(rank.nth() - 1L).findFirst();
            case LAST -> notes.stream().reduce((one, two) -> two);
            case HIGHEST -> notes.stream().max(byPitch);
            case LOWEST -> notes.stream().min(byPitch);
            case MIDDLE, NEXT -> Optional.empty();
        };
    }

    /** Right where all that may be meant are so far apart, wrong where none are. */
    Judged judged(List<At> from, List<At> to, int distance, PlacedClause said) {
        var steps = from.stream()
                .flatMap(one -> to.stream().map(other -> step(one, other)))
                .distinct()
                .toList();
        var met = Stream.of(from.get(0), to.get(0)).toList();
        boolean some = steps.stream().anyMatch(step -> fits(step, distance, said));
        boolean all = steps.stream().allMatch(step -> fits(step, distance, said));
        return some && !all ? Judged.mixed(met) : Judged.of(all, new Right.StepThere(steps.get(0)), met);
    }

    private int step(At one, At other) {
        return stage.midi(other).orElseThrow() - stage.midi(one).orElseThrow();
    }

    /** A fifth and an octave may be called a fifth; an octave is one. */
    private static boolean fits(int step, int distance, PlacedClause said) {
        boolean way = step == 0 || !(step > 0 ? said.hasAny(Tie.DOWN, Tie.FALL) : said.hasAny(Tie.UP, Tie.CLIMB));
        int far = Math.abs(step);
        return way && (far == distance || far > OCTAVE && distance < OCTAVE && far % OCTAVE == distance);
    }
}
