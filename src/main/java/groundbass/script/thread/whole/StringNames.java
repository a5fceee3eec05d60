package groundbass.script.thread.whole;

import groundbass.score.Tuning;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.stage.Judged;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** What the strings are called, one after another: "the strings are E, A, D and G". No note of a bar is meant. */
public final class StringNames {
    private final List<NoteName> lowestFirst = new ArrayList<>();
    private final List<NoteName> highestFirst = new ArrayList<>();

    public StringNames(Tuning tuning) {
        tuning.strings().forEach(string -> highestFirst.add(string.name()));
        lowestFirst.addAll(highestFirst);
        Collections.reverse(lowestFirst);
    }

    /** Empty where the clause does not name as many things as there are strings, or denies it. */
    public Optional<Judged> read(Clause clause) {
        var names = names(clause);
        boolean first = clause.units().stream()
                .filter(read -> read.is(Tie.STRING) || read.is(Constituent.Name.class))
                .findFirst()
                .filter(read -> read.is(Tie.STRING))
                .isPresent();
        boolean denied = clause.has(Tie.NOT) || clause.has(Tie.NO);
        if (!first || denied || names.size() != lowestFirst.size()) {
            return Optional.empty();
        }
        boolean right = names.equals(lowestFirst) || names.equals(highestFirst);
        return Optional.of(right ? Judged.agrees(List.of()) : Judged.open(List.of()));
    }

    private static List<NoteName> names(Clause clause) {
        return clause.units().stream()
                .map(Read::unit)
                .filter(Constituent.Name.class::isInstance)
                .map(unit -> ((Constituent.Name) unit).name())
                .toList();
    }
}
