package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.theory.ChordSymbol.Chord;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Contradicts a key, chord, tempo or metre that is named among words that were not understood. */
final class HeadGist implements Reader {
    private static final Set<Class<? extends Constituent>> KINDS = Set.of(
            Constituent.KeyNamed.class,
            Constituent.ChordNamed.class,
            Constituent.TempoNamed.class,
            Constituent.Signature.class,
            Constituent.MeterNamed.class,
            Constituent.StringCount.class,
            Constituent.BarCount.class,
            Constituent.BeatsInBar.class);

    private static final int SLOWEST = 40;

    private final Stage stage;
    private final HeadReader heads;

    HeadGist(Stage stage) {
        this.stage = stage;
        this.heads = new HeadReader(stage);
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var named = said.units().stream()
                .filter(unit -> KINDS.contains(unit.getClass()) && isOfLine(unit, said))
                .toList();
        var root = root(said);
        if (root.isPresent()) {
            return root.filter(judged -> named.isEmpty());
        }
        var number = said.only(Constituent.Number.class)
                .filter(one -> named.isEmpty() && one.value() >= SLOWEST)
                .filter(one -> said.has(Tie.TEMPO) || isMarked(one, said.units()));
        if (number.isPresent()) { // "the tempo, we make ninety"
            var tempo = new Constituent.TempoNamed(number.get().value());
            return said.hasAny(Tie.SLOW, Tie.START, Tie.UP) || isReserved(number.get(), said)
                    ? Optional.empty()
                    : heads.head(tempo, said)
                            .filter(verdict -> verdict instanceof Verdict.Contradicts)
                            .map(verdict -> new Judged(verdict, List.of()).at(number.get()));
        }
        boolean practised = said.hasAny(Tie.SLOW, Tie.START, Tie.UP) && said.has(Constituent.TempoNamed.class);
        // "the notes of D major, but with E as home"
        boolean scale = said.has(Constituent.KeyNamed.class)
                && (said.hasAny(Tie.START, Tie.NOTE) || said.has(Constituent.Name.class));
        if (named.size() != 1 || scale || practised || isReserved(named.get(0), said)) {
            return Optional.empty();
        }
        boolean ofLine = named.get(0) instanceof Constituent.KeyNamed && said.has(Tie.KEY);
        var placed = ofLine ? said.in(Scope.NOTHING) : said;
        if (named.get(0) instanceof Constituent.BarCount bars) {
            int there = stage.timeline().line().bars().size();
            return bars.bars() == there || said.hasAny(Tie.MAYBE, Tie.FOR)
                    ? Optional.empty()
                    : heads.head(bars, said.with(List.of(bars)))
                            .filter(verdict -> verdict instanceof Verdict.Contradicts)
                            .map(verdict -> new Judged(verdict, List.of()).at(bars));
        }
        return edge(named.get(0), placed)
                .flatMap(clause -> heads.head(named.get(0), clause))
                .filter(verdict -> verdict instanceof Verdict.Contradicts)
                .filter(verdict -> !isOtherwise(named.get(0), said))
                .map(verdict -> new Judged(verdict, List.of()).at(named.get(0)));
    }

    /** "Sixteen bars, and that's it": at the beginning of a talk, and before anything else. Of strings only an instrument is called. */
    private static boolean isOfLine(Constituent unit, PlacedClause said) {
        if (unit instanceof Constituent.StringCount strings) {
            return strings.instrument() && said.has(Tie.FOR);
        }
        return !(unit instanceof Constituent.BarCount)
                || said.memory().bars().isEmpty()
                        && said.units().get(0) == unit
                        && said.units().size() > 1
                        && PlacedClause.is(said.units().get(1), Tie.COMMA);
    }

    /** "It's marked a hundred and ten": nothing else of a line has such a number, and it is the last word. */
    private static boolean isMarked(Constituent.Number number, List<Constituent> units) {
        int last = units.size() - 1;
        int end = last >= 0 && PlacedClause.is(units.get(last), Tie.STOP) ? last - 1 : last;
        boolean only = units.stream().allMatch(unit -> unit == number || unit instanceof Constituent.Small);
        return only
                && end > 1
                && units.get(end) == number
                && (PlacedClause.is(units.get(0), Tie.IT) || PlacedClause.is(units.get(0), Tie.THAT))
                && PlacedClause.is(units.get(1), Tie.BE);
    }

    /** "Over a plain G chord": no chord of the bar has that root. */
    private Optional<Judged> root(PlacedClause said) {
        var units = said.units();
        int chord = units.indexOf(new Constituent.Small(Tie.CHORD));
        boolean named = chord > 0 && units.get(chord - 1) instanceof Constituent.Name;
        boolean one = said.scope().extent() == Scope.Extent.SAID && said.bars().size() == 1;
        if (!named
                || !one
                || isReserved(units.get(chord - 1), said)
                || !stage.timeline().has(said.bars().get(0))) {
            return Optional.empty();
        }
        int root = ((Constituent.Name) units.get(chord - 1)).name().pitchClass();
        var there = stage.chords(said.bars().get(0));
        boolean some = there.stream()
                .anyMatch(symbol -> !(symbol instanceof Chord it) || it.root().pitchClass() == root);
        return some
                ? Optional.empty()
                : Optional.of(Judged.wrong(new Right.ChordsThere(said.bars().get(0), there), List.of())
                        .at(units.get(chord - 1)));
    }

    /** "The tempo is ninety, so not so fast": what is denied after it is something else. */
    private static boolean isReserved(Constituent unit, PlacedClause said) {
        return said.has(Tie.MAYBE)
                || said.with(said.units().subList(0, said.units().indexOf(unit)))
                        .hasAny(Tie.NOT, Tie.NO, Tie.EXCEPT, Tie.LIKE, Tie.SAME, Tie.DIFFERENT);
    }

    /** The line ends over its last bar's chord; of each bar of many nothing can be taken. */
    private Optional<PlacedClause> edge(Constituent unit, PlacedClause said) {
        boolean many =
                said.scope().extent() == Scope.Extent.WHOLE || said.scope().extent() == Scope.Extent.EACH;
        boolean chord =
                unit instanceof Constituent.ChordNamed || unit instanceof Constituent.KeyNamed && said.has(Tie.CHORD);
        if (!many || !chord) {
            return Optional.of(said);
        }
        if (said.has(Tie.END)) {
            return Optional.of(said.in(stage.timeline().lastBar()));
        }
        return said.has(Tie.START) ? Optional.of(said.in(stage.timeline().line().firstNumber())) : Optional.empty();
    }

    /** Whether what is no key is a chord of the bar in hand, or of the one that comes. */
    private boolean isOtherwise(Constituent unit, PlacedClause said) {
        boolean chord = unit instanceof Constituent.KeyNamed || unit instanceof Constituent.ChordNamed;
        return chord
                && !said.scope().isSaid()
                && said.memory().bars().stream()
                        .flatMap(bar -> List.of(bar, bar + 1).stream())
                        .filter(stage.timeline()::has)
                        .anyMatch(bar -> heads.head(unit, said.in(bar))
                                .filter(verdict -> verdict instanceof Verdict.Agrees)
                                .isPresent());
    }
}
