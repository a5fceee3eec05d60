package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes clauses of the units between two cuts: without what ties them to others, and with the mark that asks. */
final class ClosedClause {
    private ClosedClause() {}

    /** Empty where nothing is left. */
    static Optional<Clause> of(List<Read> taken, boolean unpunctuated) {
        var units = new ArrayList<>(taken);
        while (!units.isEmpty() && Units.isSeparator(units.get(0))) {
            units.remove(0);
        }
        while (!units.isEmpty()
                && Units.isSeparator(units.get(units.size() - 1))
                && !units.get(units.size() - 1).is(Tie.ASK)) {
            units.remove(units.size() - 1);
        }
        units.removeIf(read -> read.is(Tie.THE) || read.is(Tie.SUM));
        if (unpunctuated && isAsking(units)) {
            var last = units.get(units.size() - 1);
            units.add(new Read(new Constituent.Small(Tie.ASK), last.to(), last.to()));
        }
        return units.isEmpty() ? Optional.empty() : Optional.of(new Clause(units));
    }

    /** "How many bars do we have", "what's the chord there": nobody wrote the mark that asks. */
    private static boolean isAsking(List<Read> open) {
        var first = open.stream().filter(read -> !Units.isSeparator(read)).toList();
        boolean what = first.size() > 1
                && first.get(0).is(Tie.WHAT)
                && (first.get(1).is(Tie.BE) || first.get(1).is(Tie.DO));
        boolean many = open.stream().anyMatch(read -> read.is(Tie.HOW_MANY) || read.is(Tie.WHICH) && first.size() < 3);
        return what || many || !first.isEmpty() && first.get(0).is(Tie.DO);
    }
}
