package groundbass.script.thread.whole;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;

/** Words with which a talk begins where its line does. */
public final class Beginning {
    private Beginning() {}

    public static boolean isIn(Clause clause) {
        return clause.has(Tie.START) || isFirstNote(clause) || isFirstBeat(clause);
    }

    private static boolean isFirstNote(Clause clause) {
        for (int i = 0; i + 1 < clause.units().size(); i++) {
            boolean first = clause.units().get(i).unit() instanceof Constituent.Rank rank
                    && rank.equals(new Constituent.Rank(Constituent.Rank.Which.NTH, 1));
            var next = clause.units().get(i + 1);
            boolean note = next.is(Tie.NOTE) || next.is(Tie.WE) || next.is(Tie.BE);
            if (first && note) {
                return true;
            }
        }
        return false;
    }

    private static boolean isFirstBeat(Clause clause) {
        return clause.units().stream()
                .anyMatch(read -> read.unit() instanceof Constituent.Beats beats
                        && beats.numbers().get(0) == 1);
    }
}
