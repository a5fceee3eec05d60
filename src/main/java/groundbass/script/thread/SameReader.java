package groundbass.script.thread;

import groundbass.script.checking.BarsCheck;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Claim;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Read;
import groundbass.script.grammar.Unit;
import groundbass.script.grammar.Unit.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Bars that are the same, that begin or end with the same note, or that stand over the same chord. */
final class SameReader {
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
            Tie.OF);

    private final Stage stage;
    private final BarsCheck bars;

    SameReader(Stage stage) {
        this.stage = stage;
        this.bars = new BarsCheck(stage.timeline());
    }

    Optional<Finding> read(Clause clause, Memory memory) {
        var named = new ArrayList<Integer>();
        boolean compares = clause.has(Tie.SAME)
                || clause.has(Tie.LIKE)
                || clause.has(Tie.DIFFERENT)
                || clause.has(Tie.AGAIN)
                || clause.has(Tie.BE);
        for (Read read : clause.units()) {
            var numbers = numbers(read.unit(), named, memory);
            if (numbers.isEmpty() && !isSmall(read)) {
                return Optional.empty();
            }
            numbers.ifPresent(named::addAll);
        }
        boolean two = named.size() == 2 && compares && !named.get(0).equals(named.get(1));
        boolean both = two && named.stream().allMatch(bar -> stage.timeline().has(bar));
        return both ? Optional.of(compare(clause, named.get(0), named.get(1))) : Optional.empty();
    }

    private static boolean isSmall(Read read) {
        return read.unit() instanceof Unit.Small small && TIES.contains(small.tie());
    }

    /** "The first one" is a bar where it is compared with one. */
    private Optional<List<Integer>> numbers(Unit unit, List<Integer> named, Memory memory) {
        if (unit instanceof Unit.Bars said) {
            return Optional.of(said.numbers());
        }
        if (unit instanceof Unit.BarAt at) {
            return switch (at.way()) {
                case LAST -> Optional.of(List.of(stage.timeline().lastBar()));
                case THIS -> memory.bar().map(List::of);
                case NEXT, EACH -> Optional.empty();
            };
        }
        boolean rank = unit instanceof Unit.Rank which && which.which() == Unit.Rank.Which.NTH && named.size() == 1;
        return rank ? Optional.of(List.of(((Unit.Rank) unit).nth())) : Optional.empty();
    }

    private Finding compare(Clause clause, int one, int other) {
        boolean different = clause.has(Tie.DIFFERENT);
        if (clause.has(Tie.CHORD)) {
            boolean same = stage.chords(one).equals(stage.chords(other));
            return Finding.of(same != different, new Right.ChordsThere(other, stage.chords(other)), List.of());
        }
        if (clause.has(Tie.START) || clause.has(Tie.END)) {
            return edges(clause.has(Tie.END), different, one, other);
        }
        if (clause.has(Tie.NOTE)) {
            return Finding.open(List.of());
        }
        var verdict = bars.check(new Claim.SameBars(List.of(one), List.of(other), Claim.Scope.ALL));
        var finding = new Finding(verdict, List.of());
        return different ? turned(finding) : finding;
    }

    private static Finding turned(Finding finding) {
        return Finding.of(finding.contradicts(), new Right.NotAlike(), List.of());
    }

    private Finding edges(boolean end, boolean different, int one, int other) {
        var here = edge(one, end);
        var there = edge(other, end);
        if (here.isEmpty() || there.isEmpty()) {
            return Finding.open(List.of());
        }
        boolean same = stage.midi(here.get()).equals(stage.midi(there.get()));
        boolean alike = same
                || stage.midi(here.get())
                        .flatMap(midi -> stage.midi(there.get()).map(second -> (midi - second) % 12 == 0))
                        .orElse(false);
        var notes = List.of(here.get());
        if (same != alike) {
            return Finding.open(notes);
        }
        return Finding.of(same != different, new Right.NotAlike(), notes);
    }

    private Optional<At> edge(int bar, boolean end) {
        var notes = stage.notes(bar);
        return notes.isEmpty() ? Optional.empty() : Optional.of(notes.get(end ? notes.size() - 1 : 0));
    }
}
