package groundbass.script.thread.stage;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A clause with the places taken out of it.
 *
 * @param units what is left, in order
 * @param memory what was spoken of before
 * @param directly whether what is said to come, is said to come with nothing between
 */
public record PlacedClause(Scope scope, List<Constituent> units, Memory memory, boolean directly) {
    private static final Set<Tie> BEFORE_PLACES = Set.of(Tie.ON, Tie.IN, Tie.OF, Tie.AT, Tie.FOR, Tie.FROM, Tie.OVER);

    /** Empty where the clause names two places that do not go together. */
    public static Optional<PlacedClause> of(Clause clause, Memory memory, Stage stage) {
        var scope = Scope.NOTHING;
        var rest = new ArrayList<Constituent>();
        boolean cut = false;
        for (Read read : clause.units()) {
            var unit = read.unit();
            var bars = bars(unit, memory, stage);
            var time =
                    clause.has(Tie.TO) ? Scope.time(unit) : onward(unit, rest).or(() -> Scope.time(unit));
            if (read.is(Tie.DIRECTLY)) {
                continue;
            }
            if (bars.isPresent()) {
                boolean more = unit instanceof Constituent.Bars
                        && scope.extent() == Scope.Extent.SAID
                        && !rest.isEmpty()
                        && (is(rest.get(rest.size() - 1), Tie.AND) || is(rest.get(rest.size() - 1), Tie.IN));
                if (scope.isSaid() && !more) {
                    return Optional.empty();
                }
                var both = new ArrayList<>(scope.bars());
                both.addAll(bars.get().bars());
                scope = more ? scope.in(both, Scope.Extent.SAID) : bars.get().at(scope);
            } else if (time.isPresent()) {
                var both = scope.time()
                        .map(before -> Scope.both(before, time.get()))
                        .orElse(time);
                if (both.isEmpty()) {
                    return Optional.empty();
                }
                scope = scope.at(both.get());
            } else {
                boolean apart = cut && isContent(unit) && isContent(rest.get(rest.size() - 1));
                if (apart) { // "two quavers on beat three B and D"
                    rest.add(new Constituent.Small(Tie.COMMA));
                }
                rest.add(unit);
                cut = false;
                continue;
            }
            dropPreposition(rest);
            cut = !rest.isEmpty();
        }
        return Optional.of(new PlacedClause(scope, List.copyOf(rest), memory, clause.has(Tie.DIRECTLY)));
    }

    /** "From beat three". */
    private static Optional<Scope.Time> onward(Constituent unit, List<Constituent> before) {
        boolean from = !before.isEmpty() && is(before.get(before.size() - 1), Tie.FROM);
        if (from && unit instanceof Constituent.Beats beats && beats.numbers().size() == 1) {
            return Optional.of(new Scope.Onward(beats.numbers().get(0), 0));
        }
        return from
                        && unit instanceof Constituent.Parts parts
                        && parts.beat().isPresent()
                        && parts.parts().size() == 1
                ? Optional.of(
                        new Scope.Onward(parts.beat().getAsInt(), parts.parts().get(0)))
                : Optional.empty();
    }

    private static boolean isContent(Constituent unit) {
        return !(unit instanceof Constituent.Small) && !(unit instanceof Constituent.Unknown);
    }

    private static void dropPreposition(List<Constituent> rest) {
        if (!rest.isEmpty()
                && rest.get(rest.size() - 1) instanceof Constituent.Small small
                && BEFORE_PLACES.contains(small.tie())) {
            rest.remove(rest.size() - 1);
        }
    }

    private record InBars(List<Integer> bars, Scope.Extent extent) {
        Scope at(Scope scope) {
            return scope.in(bars, extent);
        }
    }

    private static Optional<InBars> bars(Constituent unit, Memory memory, Stage stage) {
        if (unit instanceof Constituent.Bars bars) {
            return Optional.of(new InBars(bars.numbers(), Scope.Extent.SAID));
        }
        if (unit instanceof Constituent.BarsAtEdge edge) {
            return Optional.of(new InBars(stage.bars(edge), Scope.Extent.SAID));
        }
        if (unit instanceof Constituent.Whole) {
            return Optional.of(new InBars(stage.allBars(), Scope.Extent.WHOLE));
        }
        if (!(unit instanceof Constituent.BarAt at)) {
            return Optional.empty();
        }
        int last = stage.timeline().lastBar();
        return switch (at.way()) {
            case EACH -> Optional.of(new InBars(stage.allBars(), Scope.Extent.EACH));
            case LAST -> Optional.of(new InBars(List.of(last), Scope.Extent.SAID));
            case PENULTIMATE -> Optional.of(new InBars(List.of(last - 1), Scope.Extent.SAID));
            case FIRST -> Optional.of(new InBars(List.of(stage.timeline().line().firstNumber()), Scope.Extent.SAID));
            case THIS -> Optional.of(new InBars(memory.bar().stream().toList(), Scope.Extent.SAID));
            case NEXT ->
                Optional.of(new InBars(
                        memory.bar()
                                .filter(bar -> bar < last)
                                .map(bar -> List.of(bar + 1))
                                .orElse(List.of()),
                        Scope.Extent.SAID));
        };
    }

    public boolean has(Tie tie) {
        return units.stream().anyMatch(unit -> is(unit, tie));
    }

    public boolean hasAny(Tie... ties) {
        return hasAny(List.of(ties));
    }

    public boolean hasAny(Collection<Tie> ties) {
        return ties.stream().anyMatch(this::has);
    }

    public boolean has(Class<? extends Constituent> kind) {
        return units.stream().anyMatch(kind::isInstance);
    }

    public <T extends Constituent> List<T> all(Class<T> kind) {
        return units.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    public <T extends Constituent> Optional<T> only(Class<T> kind) {
        var all = all(kind);
        return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }

    /** Whether nothing is said beyond these kinds of units and these ties. */
    public boolean isOnly(Set<Class<? extends Constituent>> kinds, Set<Tie> ties) {
        return units.stream()
                .allMatch(unit -> unit instanceof Constituent.Small small
                        ? ties.contains(small.tie())
                        : kinds.contains(unit.getClass()));
    }

    public static boolean is(Constituent unit, Tie tie) {
        return unit instanceof Constituent.Small small && small.tie() == tie;
    }

    /** The same, said of a bar. */
    public PlacedClause in(int bar) {
        return in(scope.in(List.of(bar), Scope.Extent.SAID));
    }

    /** The same, said of another part of the line. */
    public PlacedClause in(Scope other) {
        return new PlacedClause(other, units, memory, directly);
    }

    /** The same, where something else was spoken of before. */
    public PlacedClause after(Memory before) {
        return new PlacedClause(scope, units, before, directly);
    }

    public PlacedClause with(List<Constituent> others) {
        return new PlacedClause(scope, List.copyOf(others), memory, directly);
    }

    /** The bars that are meant: those that were said, or those in hand. */
    public List<Integer> bars() {
        return scope.isSaid() ? scope.bars() : memory.bars();
    }
}
