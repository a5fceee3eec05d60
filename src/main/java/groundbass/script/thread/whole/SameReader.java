package groundbass.script.thread.whole;

import groundbass.script.checking.BarsCheck;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Claim;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Bars that are the same, that begin or end with the same note, or that stand over the same chord. */
public final class SameReader {
    private static final Set<Tie> TIES = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.SAME,
            Tie.LIKE,
            Tie.AGAIN,
            Tie.AND,
            Tie.COMMA,
            Tie.DIFFERENT,
            Tie.NOTE,
            Tie.CHORD,
            Tie.START,
            Tie.END,
            Tie.ON,
            Tie.WITH,
            Tie.ONE,
            Tie.SO,
            Tie.BOTH,
            Tie.OVER,
            Tie.AT,
            Tie.IN,
            Tie.STOP,
            Tie.OF,
            Tie.THEY,
            Tie.THAT,
            Tie.ALL,
            Tie.IT,
            Tie.THEN,
            Tie.EXCEPT,
            Tie.FOR,
            Tie.RHYTHM,
            Tie.FROM,
            Tie.WE,
            Tie.ASK);

    /** Words with which what is named beside bars is compared, and not the bars. */
    private static final Set<Tie> OTHERWISE = Set.of(
            Tie.NOT,
            Tie.NO,
            Tie.ONLY,
            Tie.EXCEPT,
            Tie.MAYBE,
            Tie.OTHER,
            Tie.STRING,
            Tie.FRET,
            Tie.BEAT,
            Tie.ABOVE,
            Tie.BELOW,
            Tie.HIGH,
            Tie.LOW,
            Tie.TO,
            Tie.BEFORE,
            Tie.AFTER,
            Tie.KEY,
            Tie.FEEL,
            Tie.WHAT,
            Tie.BUT);

    private final Stage stage;
    private final BarsCheck bars;

    public SameReader(Stage stage) {
        this.stage = stage;
        this.bars = new BarsCheck(stage.timeline());
    }

    public Optional<Judged> read(Clause clause, Memory memory) {
        var named = new ArrayList<Integer>();
        var beats = new ArrayList<Integer>();
        var before = Optional.<Read>empty();
        for (Read read : clause.units()) {
            var numbers = numbers(read.unit(), named, memory);
            boolean beat = read.unit() instanceof Constituent.Beats;
            boolean mere =
                    read.is(Tie.ONLY) && before.isPresent() && before.get().is(Tie.BE); // "is just bar one"
            before = Optional.of(read);
            boolean through = read.is(Constituent.Whole.class) && clause.has(Tie.FROM); // "from start to finish"
            boolean shift = Shifts.isPart(clause, read);
            if (numbers.isEmpty() && !beat && !mere && !through && !shift && !isSmall(read)) {
                return Optional.empty();
            }
            numbers.ifPresent(named::addAll);
            if (read.unit() instanceof Constituent.Beats said) {
                beats.addAll(said.numbers());
            }
        }
        if (named.isEmpty() && !beats.isEmpty()) { // "beat three is the same again"
            memory.compared().ifPresent(named::add);
        }
        var rank = clause.units().stream()
                .map(Read::unit)
                .filter(Constituent.Rank.class::isInstance)
                .map(Constituent.Rank.class::cast)
                .findFirst();
        boolean ofBeats = rank.isPresent() && beats.size() == 1 && clause.has(Tie.SAME);
        if (ofBeats) { // "the second beat of bar six is the same as the first"
            return beats(named, beats, rank.get().nth());
        }
        inHand(clause, named, !beats.isEmpty(), memory).ifPresent(bar -> named.add(0, bar));
        boolean onward = named.size() == 1 && beats.isEmpty() && isSameThing(clause);
        if (onward) { // "bar six, same thing": as the one that was spoken of before it
            memory.bar().filter(bar -> bar == named.get(0) - 1).ifPresent(named::add);
        }
        boolean two = named.size() == 2 && isComparing(clause) && !named.get(0).equals(named.get(1));
        boolean both = two && named.stream().allMatch(bar -> stage.timeline().has(bar));
        return both
                ? Optional.of(compare(clause, named.get(0), named.get(1), beats).comparedWith(named.get(1)))
                : Optional.empty();
    }

    /** What a clause of which not every word was understood says of two bars; never that they are alike. */
    public Optional<Judged> gist(Clause clause, Memory memory) {
        boolean plain = clause.has(Tie.SAME)
                && clause.units().stream()
                        .allMatch(read -> read.is(Constituent.Bars.class)
                                || read.is(Constituent.BarAt.class)
                                || read.unit() instanceof Constituent.Small small && !OTHERWISE.contains(small.tie()));
        if (!plain) {
            return Optional.empty();
        }
        var known = clause.units().stream()
                .filter(read -> !(read.unit() instanceof Constituent.Small) || isSmall(read))
                .toList();
        return known.isEmpty()
                ? Optional.empty()
                : read(new Clause(known), memory).filter(Judged::contradicts);
    }

    /** Whether no more is said of a bar than that it is the same, and how far it is moved. */
    private static boolean isSameThing(Clause clause) {
        return clause.has(Tie.SAME)
                && clause.units().stream()
                        .allMatch(read -> read.is(Constituent.Bars.class)
                                || read.is(Tie.SAME)
                                || read.is(Tie.AGAIN)
                                || read.is(Tie.COMMA)
                                || read.is(Tie.COLON)
                                || read.is(Tie.BE)
                                || Shifts.isPart(clause, read));
    }

    private Optional<Judged> beats(List<Integer> named, List<Integer> beats, int other) {
        boolean known =
                named.size() == 2 && named.get(1) == other && stage.timeline().has(named.get(0));
        var scope = new Claim.Scope(beats, List.of(other), List.of(), false, Claim.Shift.NONE, false);
        return known
                ? Optional.of(new Judged(
                        bars.check(new Claim.SameBars(List.of(named.get(0)), List.of(named.get(0)), scope)), List.of()))
                : Optional.empty();
    }

    private static boolean isComparing(Clause clause) {
        return clause.has(Tie.SAME)
                || clause.has(Tie.LIKE)
                || clause.has(Tie.DIFFERENT)
                || clause.has(Tie.AGAIN)
                || clause.has(Tie.RHYTHM)
                || clause.has(Tie.BE);
    }

    /** "It's the same as bar one", "beat four is like bar one": the bar in hand is. */
    private static Optional<Integer> inHand(Clause clause, List<Integer> named, boolean beats, Memory memory) {
        boolean refers = clause.has(Tie.IT) || clause.has(Tie.THAT) || beats;
        boolean again = clause.has(Tie.AGAIN) && clause.has(Tie.BE);
        boolean same = clause.has(Tie.SAME) || clause.has(Tie.LIKE) || again;
        return named.size() == 1 && refers && same ? memory.bar() : Optional.empty();
    }

    private static boolean isSmall(Read read) {
        return read.unit() instanceof Constituent.Small small && TIES.contains(small.tie());
    }

    /** "The first one" is a bar where it is compared with one. */
    private Optional<List<Integer>> numbers(Constituent unit, List<Integer> named, Memory memory) {
        if (unit instanceof Constituent.Bars said) {
            return Optional.of(said.numbers());
        }
        if (unit instanceof Constituent.BarsAtEdge edge) {
            return Optional.of(stage.bars(edge));
        }
        if (unit instanceof Constituent.BarAt at) {
            return switch (at.way()) {
                case LAST -> Optional.of(List.of(stage.timeline().lastBar()));
                case PENULTIMATE -> Optional.of(List.of(stage.timeline().lastBar() - 1));
                case FIRST -> Optional.of(List.of(stage.timeline().line().firstNumber()));
                case THIS -> memory.bar().map(List::of);
                case NEXT, EACH -> Optional.empty();
            };
        }
        boolean those = unit instanceof Constituent.BarCount count
                && named.isEmpty()
                && memory.bars().size() == count.bars();
        if (those) { // "those two bars"
            return Optional.of(memory.bars());
        }
        boolean rank = unit instanceof Constituent.Rank which
                && which.which() == Constituent.Rank.Which.NTH
                && named.size() == 1;
        return rank ? Optional.of(List.of(((Constituent.Rank) unit).nth())) : Optional.empty();
    }

    private Judged compare(Clause clause, int one, int other, List<Integer> beats) {
        boolean different = clause.has(Tie.DIFFERENT);
        if (clause.has(Tie.RHYTHM) || !beats.isEmpty() || !Shifts.of(clause).equals(Claim.Shift.NONE)) {
            return alike(different, one, other, scope(beats, clause));
        }
        if (clause.has(Tie.CHORD)) {
            boolean same = stage.chords(one).equals(stage.chords(other));
            return Judged.of(same != different, new Right.ChordsThere(other, stage.chords(other)), List.of());
        }
        if (clause.has(Tie.START) || clause.has(Tie.END)) {
            return edges(clause.has(Tie.END), different, one, other);
        }
        if (clause.has(Tie.NOTE)) {
            return notes(different, one, other);
        }
        return alike(different, one, other, Claim.Scope.ALL);
    }

    private Judged alike(boolean different, int one, int other, Claim.Scope scope) {
        var finding = new Judged(bars.check(new Claim.SameBars(List.of(one), List.of(other), scope)), List.of());
        return different ? turned(finding) : finding;
    }

    /** "Except for beat four" says which beats differ. */
    private static Claim.Scope scope(List<Integer> beats, Clause clause) {
        boolean but = clause.has(Tie.EXCEPT);
        return new Claim.Scope(
                but ? List.of() : beats,
                List.of(),
                but ? beats : List.of(),
                clause.has(Tie.RHYTHM),
                Shifts.of(clause),
                false);
    }

    /** The same notes may come in another rhythm; none of them may be missing. */
    private Judged notes(boolean different, int one, int other) {
        boolean same = pitches(one).equals(pitches(other));
        return same || different ? Judged.mixed(List.of()) : Judged.wrong(new Right.NotAlike(), List.of());
    }

    private Set<Integer> pitches(int bar) {
        return stage.notes(bar).stream()
                .flatMap(at -> stage.midi(at).stream())
                .map(midi -> Math.floorMod(midi, 12))
                .collect(Collectors.toSet());
    }

    private static Judged turned(Judged finding) {
        return Judged.of(finding.contradicts(), new Right.NotAlike(), List.of());
    }

    private Judged edges(boolean end, boolean different, int one, int other) {
        var here = edge(one, end);
        var there = edge(other, end);
        if (here.isEmpty() || there.isEmpty()) {
            return Judged.open(List.of());
        }
        boolean same = stage.midi(here.get()).equals(stage.midi(there.get()));
        boolean alike = same
                || stage.midi(here.get())
                        .flatMap(midi -> stage.midi(there.get()).map(second -> (midi - second) % 12 == 0))
                        .orElse(false);
        var notes = List.of(here.get());
        if (same != alike) {
            return Judged.open(notes);
        }
        return Judged.of(same != different, new Right.NotAlike(), notes);
    }

    private Optional<At> edge(int bar, boolean end) {
        var notes = stage.notes(bar);
        return notes.isEmpty() ? Optional.empty() : Optional.of(notes.get(end ? notes.size() - 1 : 0));
    }
}
