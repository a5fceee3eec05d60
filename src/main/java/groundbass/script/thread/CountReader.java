package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Together;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** How many of something there are in a bar or in the line; none where it is denied. */
final class CountReader implements Reader {
    private static final Set<Tie> IDLE = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.WE,
            Tie.THERE,
            Tie.IT,
            Tie.THAT,
            Tie.ONLY,
            Tie.NO,
            Tie.NOT,
            Tie.ANY,
            Tie.NOTE,
            Tie.IN,
            Tie.SO,
            Tie.AND,
            Tie.COMMA,
            Tie.BUT,
            Tie.THEN,
            Tie.STOP,
            Tie.OF,
            Tie.AGAIN,
            Tie.AT,
            Tie.ON,
            Tie.ONE,
            Tie.STRING,
            Tie.THEY,
            Tie.ALL,
            Tie.TO,
            Tie.BAR);

    private final Stage stage;

    CountReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause whole) {
        var said = withoutAll(whole);
        boolean denied = said.hasAny(Tie.NO, Tie.NOT);
        if (said.scope().time().isPresent() && !denied) {
            return atTime(said);
        }
        boolean others = said.has(Tie.THEY) && !said.hasAny(Tie.NO, Tie.NOT); // "these are two quavers"
        if (others) {
            return Optional.empty();
        }
        var many = many(said);
        var left = what(said);
        if (many.isEmpty() || left.isEmpty()) {
            return Optional.empty();
        }
        boolean stated = many.getAsInt() == 0
                || said.scope().isSaid()
                || said.hasAny(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.WE, Tie.NO, Tie.NOT, Tie.ONLY)
                || said.has(Constituent.Times.class);
        if (!stated || isManner(said.units())) {
            return Optional.empty();
        }
        boolean bare = said.units().stream().noneMatch(unit -> !(unit instanceof Constituent.Small) && !isAmount(unit));
        if (bare && said.has(Tie.NOTE)) {
            return counted(Item.NOTHING, many.getAsInt(), said);
        }
        if (isRests(left.get()) && said.has(Tie.NOTE)) {
            return Optional.empty(); // "no note there, just a rest"
        }
        if (isRests(left.get())) {
            return rests(many.getAsInt(), said);
        }
        if (left.get().size() == 1 && left.get().get(0) instanceof Constituent.Triplet) {
            return triplets(many.getAsInt(), said);
        }
        return Items.of(left.get(), stage)
                .filter(row -> row.items().size() == 1 && !row.items().get(0).rest())
                .filter(row -> !row.items().get(0).has(Part.Kind.OCTAVE)) // how far, and not how many
                .flatMap(row -> counted(row.items().get(0), many.getAsInt(), said));
    }

    /** "The bar runs out in two quavers": how, and not how many. */
    private static boolean isManner(List<Constituent> units) {
        return IntStream.range(1, units.size())
                .anyMatch(i -> units.get(i) instanceof Constituent.Count && PlacedClause.is(units.get(i - 1), Tie.IN));
    }

    /** "On beat two there are three notes": so many begin there, or sound there. */
    private Optional<Judged> atTime(PlacedClause said) {
        boolean plain = said.has(Tie.NOTE)
                && said.units().stream().allMatch(unit -> unit instanceof Constituent.Small || isAmount(unit))
                && said.hasAny(Tie.BE, Tie.HAVE, Tie.PLAY)
                && !said.hasAny(Tie.AGAIN, Tie.THEY, Tie.AFTER, Tie.BEFORE, Tie.MAYBE);
        var many = plain ? said.only(Constituent.Count.class) : Optional.<Constituent.Count>empty();
        var stretches =
                many.isEmpty() || said.bars().size() != 1 || said.scope().time().get() instanceof Scope.Parts
                        ? List.<Timeline.Stretch>of()
                        : stage.stretches(
                                said.bars(), said.scope().time(), said.memory().beat());
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        var notes = stage.notes(stretches);
        var pitched = notes.stream().filter(at -> !at.note().isDead()).toList();
        int held =
                stage.timeline().isSilent(said.bars().get(0), stretches.get(0).from()) ? 0 : 1;
        boolean right = onsets(notes) == many.get().many()
                || onsets(pitched) == many.get().many();
        boolean sounding = onsets(notes) + held == many.get().many()
                && notes.stream()
                        .noneMatch(
                                at -> at.note().onset().equals(stretches.get(0).from()));
        return Optional.of(
                sounding ? Judged.mixed(notes) : Judged.of(right, new Right.CountThere((int) onsets(notes)), notes));
    }

    private static boolean isAmount(Constituent unit) {
        return unit instanceof Constituent.Count
                || unit instanceof Constituent.Times
                || unit instanceof Constituent.BarCount;
    }

    private static OptionalInt many(PlacedClause said) {
        var counts = said.all(Constituent.Count.class);
        var times = said.all(Constituent.Times.class);
        boolean denied = said.hasAny(Tie.NO, Tie.NOT);
        if (counts.size() + times.size() > 1) {
            return OptionalInt.empty();
        }
        if (denied) {
            return counts.isEmpty() && times.isEmpty() && !said.has(Tie.LIKE) && !said.has(Constituent.Number.class)
                    ? OptionalInt.of(0)
                    : OptionalInt.empty();
        }
        if (!counts.isEmpty()) {
            return OptionalInt.of(counts.get(0).many());
        }
        var late = late(said);
        if (late.isPresent()) {
            return late;
        }
        return times.isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(times.get(0).many());
    }

    /** "Hammer-ons hast du zwei": the number stands behind what it counts. */
    private static OptionalInt late(PlacedClause said) {
        var number = said.only(Constituent.Number.class);
        var content = said.units().stream()
                .filter(unit -> !(unit instanceof Constituent.Small))
                .toList();
        boolean two = number.isPresent() && content.size() == 2 && said.hasAny(Tie.HAVE, Tie.BE);
        boolean behind = two && content.get(1) == number.get() && isCounted(content.get(0));
        boolean ahead = two && content.get(0) == number.get() && isCounted(content.get(1)) && !said.has(Tie.HAVE);
        return behind || ahead ? OptionalInt.of(number.get().value()) : OptionalInt.empty();
    }

    private static boolean isCounted(Constituent unit) {
        return unit instanceof Constituent.Played
                || unit instanceof Constituent.Dead
                || unit instanceof Constituent.Silence
                || unit instanceof Constituent.Triplet;
    }

    /** "Of those nine notes, three are popped": what is said of all leads to what is said of some. */
    private static PlacedClause withoutAll(PlacedClause said) {
        boolean of = said.units().size() > 1
                && PlacedClause.is(said.units().get(0), Tie.OF)
                && PlacedClause.is(said.units().get(1), Tie.THEY);
        int comma = 0;
        while (comma < said.units().size() && !PlacedClause.is(said.units().get(comma), Tie.COMMA)) {
            comma++;
        }
        return of && comma < said.units().size()
                ? said.with(said.units().subList(comma, said.units().size()))
                : said;
    }

    /** What is counted; empty where more is said. */
    private Optional<List<Constituent>> what(PlacedClause said) {
        var rest = new ArrayList<Constituent>();
        int bars = stage.timeline().line().bars().size();
        for (var unit : said.units()) {
            boolean idle = unit instanceof Constituent.Small small && IDLE.contains(small.tie())
                    || isAmount(unit)
                    || unit instanceof Constituent.Number && late(said).isPresent();
            boolean other = unit instanceof Constituent.BarCount count && count.bars() != bars;
            if (other) {
                return Optional.empty();
            }
            if (!idle) {
                rest.add(unit);
            }
        }
        return Optional.of(rest);
    }

    /** Where nothing was said of bars it is the one in hand, or the line. */
    private List<List<Integer>> scopes(PlacedClause said) {
        if (said.scope().isSaid()) {
            return said.scope().extent() == Scope.Extent.EACH
                            || said.scope().bars().isEmpty()
                    ? List.of()
                    : List.of(said.scope().bars());
        }
        if (said.has(Constituent.BarCount.class) || said.has(Tie.ANY)) {
            return List.of(stage.allBars());
        }
        boolean here =
                isThere(said.units()) || said.has(Constituent.Times.class) && said.has(Tie.THAT); // "that G, twice"
        if (here && !said.memory().bars().isEmpty()) {
            return List.of(said.memory().bars());
        }
        return said.memory().bars().isEmpty()
                ? List.of(stage.allBars())
                : List.of(said.memory().bars(), stage.allBars());
    }

    /** "Das spielst du da viermal": in the bar in hand; "there are four" says nothing of where. */
    private static boolean isThere(List<Constituent> units) {
        for (int i = 0; i < units.size(); i++) {
            boolean before = i > 0 && isVerb(units.get(i - 1));
            boolean after = i + 1 < units.size() && isVerb(units.get(i + 1));
            if (PlacedClause.is(units.get(i), Tie.THERE) && !before && !after) {
                return true;
            }
        }
        return false;
    }

    private static boolean isVerb(Constituent unit) {
        return PlacedClause.is(unit, Tie.BE) || PlacedClause.is(unit, Tie.HAVE) || PlacedClause.is(unit, Tie.PLAY);
    }

    private Optional<Judged> counted(Item item, int many, PlacedClause said) {
        var findings = new ArrayList<Judged>();
        for (var bars : scopes(said)) {
            if (bars.stream().anyMatch(bar -> !stage.timeline().has(bar))) {
                return Optional.empty();
            }
            var all = stage.notes(
                    stage.stretches(bars, said.scope().time(), said.memory().beat()));
            var matching = all.stream().filter(item::fits).toList();
            long onsets = onsets(matching);
            boolean ofDead = item.has(Part.Kind.DEAD) || item.has(Part.Kind.MANNER);
            long pitched = onsets(matching.stream()
                    .filter(at -> ofDead || !at.note().isDead())
                    .toList());
            boolean right = onsets == many || pitched == many || matching.size() == many;
            boolean again = said.has(Constituent.Times.class) && !said.scope().isSaid() && onsets > many;
            if (!right && again) { // "twice", and later once more
                return Optional.of(Judged.open(
                        findings.isEmpty() ? matching : findings.get(0).notes()));
            }
            boolean taste = item.has(Part.Kind.SHORT); // how short a note is, is a matter of taste
            boolean loose = !right && (taste || isMeter(many, said));
            findings.add(
                    loose ? Judged.open(matching) : Judged.of(right, new Right.CountThere((int) onsets), matching));
        }
        boolean inIt =
                said.has(Tie.IT) && said.hasAny(Tie.IN, Tie.TO) && !said.scope().isSaid();
        var group = said.memory().notes();
        if (inIt && group.size() > 1) { // "a triplet, so there are three notes in it"
            long there = onsets(group.stream().filter(item::fits).toList());
            findings.add(Judged.of(there == many, new Right.CountThere((int) there), group));
        }
        return choice(findings);
    }

    /** "Four quarters" may be the metre. */
    private boolean isMeter(int many, PlacedClause said) {
        var meter = stage.timeline().at(stage.timeline().line().firstNumber()).meter();
        return said.only(Constituent.Value.class)
                .filter(value -> many == meter.counts() && value.length().equals(Fraction.of(1, meter.unit())))
                .isPresent();
    }

    private static long onsets(List<At> notes) {
        return notes.stream().map(At::position).distinct().count();
    }

    /** Right where every scope has it so, wrong where none has. */
    private static Optional<Judged> choice(List<Judged> findings) {
        if (findings.isEmpty()) {
            return Optional.empty();
        }
        boolean all = findings.stream().allMatch(Judged::agrees);
        boolean any = findings.stream().anyMatch(Judged::agrees);
        if (any && !all) {
            return Optional.of(Judged.mixed(List.of()));
        }
        return Optional.of(findings.get(0));
    }

    private static boolean isRests(List<Constituent> units) {
        return units.size() == 1
                && units.get(0) instanceof Constituent.Silence silence
                && silence.length().isEmpty();
    }

    /** Silences may be counted as they are heard, or as they are written. */
    private Optional<Judged> rests(int many, PlacedClause said) {
        var findings = new ArrayList<Judged>();
        for (var bars : scopes(said)) {
            if (bars.stream().anyMatch(bar -> !stage.timeline().has(bar))) {
                return Optional.empty();
            }
            boolean timed = said.scope().time().isPresent();
            var stretches =
                    stage.stretches(bars, said.scope().time(), said.memory().beat());
            int heard = (int)
                    stage.events(stretches).stream().filter(Together::isRest).count();
            int written = timed
                    ? heard
                    : (int) bars.stream()
                            .mapToLong(stage.timeline()::restsWritten)
                            .sum();
            findings.add(Judged.of(heard == many || written == many, new Right.CountThere(heard), List.of()));
        }
        return choice(findings);
    }

    private Optional<Judged> triplets(int many, PlacedClause said) {
        var findings = new ArrayList<Judged>();
        for (var bars : scopes(said)) {
            if (bars.stream().anyMatch(bar -> !stage.timeline().has(bar))) {
                return Optional.empty();
            }
            var beats = new TreeSet<String>();
            var notes = stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                    .filter(Part::isTuplet)
                    .toList();
            notes.forEach(at -> beats.add(at.bar() + " " + beat(at)));
            findings.add(Judged.of(beats.size() == many, new Right.CountThere(beats.size()), notes));
        }
        return choice(findings);
    }

    private Fraction beat(At at) {
        return stage.timeline().at(at.bar()).meter().beatStart(at.note().onset());
    }
}
