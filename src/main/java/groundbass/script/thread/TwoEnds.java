package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;

/**
 * How far it is from a note in one place of the line to a note in another: "from the last C of bar five to the C that
 * opens bar six it is an octave".
 */
final class TwoEnds {
    private final Stage stage;
    private final EndsReader ends;

    TwoEnds(Stage stage) {
        this.stage = stage;
        this.ends = new EndsReader(stage);
    }

    Optional<Judged> read(Clause clause, Memory memory) {
        int to = indexOf(clause, Tie.TO);
        boolean denied = clause.has(Tie.NOT) || clause.has(Tie.NO) || clause.has(Tie.MAYBE);
        if (to <= 0 || denied || !clause.has(Tie.FROM)) {
            return Optional.empty();
        }
        var first = side(clause.units().subList(0, to), memory);
        var second = side(clause.units().subList(to, clause.units().size()), memory);
        var whole = new PlacedClause(
                Scope.NOTHING, clause.units().stream().map(Read::unit).toList(), memory, false);
        var distance = EndsReader.distance(whole);
        return first.isEmpty() || second.isEmpty() || distance.isEmpty()
                ? Optional.empty()
                : Optional.of(ends.judged(first, second, distance.getAsInt(), whole));
    }

    /** The notes that may be meant; none where that is not known. */
    private List<At> side(List<Read> units, Memory memory) {
        return PlacedClause.of(new Clause(units), memory, stage)
                .map(said -> ends.ends(EndsReader.what(said.units()), said))
                .orElse(List.of());
    }

    private static int indexOf(Clause clause, Tie tie) {
        for (int i = 0; i < clause.units().size(); i++) {
            if (clause.units().get(i).is(tie)) {
                return i;
            }
        }
        return -1;
    }
}
