package groundbass.script.thread.talk;

import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Run;
import groundbass.script.thread.talk.Listening.Step;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Cuts talk that nobody cut into sentences: of all ways to do so that one is meant of which most is understood, with the
 * fewest clauses and the least strain. Where one way makes the talk true and another does not, the speaker is believed.
 */
final class BestCut {
    /** So many units a clause may have, unless its words say that none ends sooner. */
    private static final int LONGEST = 16;

    /** So many likely ends a clause may go past, the last of them its own. */
    private static final int ENDS = 2;

    /** What each thing that a clause tells is worth, by what came of the clause. */
    private static final double TRUE = 1;

    private static final double WRONG = 0.6;
    private static final double WRONG_IN_GIST = 0.2;
    private static final double IN_PART = 0.4;
    private static final double OPEN = 0.1;

    /** What speaks against one more clause, and against units of which none means anything. */
    private static final double CLAUSE = 0.8;

    private static final double NOTHING = 0.3;

    /** What speaks for a clause that ends where its words say so. */
    private static final double LIKELY = 0.3;

    /** How much strain weighs. */
    private static final double STRAIN = 1.5;

    /** With more strain than this no clause is heard, unless there is no shorter one. */
    private static final double HOPELESS = 1.2;

    /** How much of it a clause may bear that is called wrong, in itself and at each end. */
    private static final double BEARABLE = 0.5;

    private final Run run;
    private final Listening listening;

    BestCut(Run run, Listening listening) {
        this.run = run;
        this.listening = listening;
    }

    /**
     * A clause as it was heard.
     *
     * @param from the index of its first unit
     */
    record Cut(Step step, int from) {}

    /** The best way to a joint. */
    private record Way(double worth, Way before, List<Cut> last, Course after) {}

    /** The units between two joints, if they were one clause. */
    private record Span(int from, int to, double strain, double strainAtEnd) {
        double all() {
            return strain + strainAtEnd;
        }
    }

    List<Cut> clauses(Course start) {
        var joints = run.joints();
        var best = new Way[joints.size()];
        best[0] = new Way(0, null, List.of(), start);
        for (int from = 0; from + 1 < best.length; from++) {
            goOn(best, from, joints);
        }
        var cuts = new ArrayList<Cut>();
        for (var way = best[best.length - 1]; way != null; way = way.before()) {
            cuts.addAll(way.last());
        }
        Collections.reverse(cuts);
        return cuts;
    }

    private void goOn(Way[] best, int from, List<Integer> joints) {
        int ends = 0;
        for (int to = from + 1; to < best.length && ends < ENDS; to++) {
            boolean tooLong = joints.get(to) - joints.get(from) > LONGEST && to > from + 1;
            if (tooLong) {
                return;
            }
            var span = span(joints.get(from), joints.get(to));
            if (to == from + 1 || span.all() <= HOPELESS) {
                best[to] = better(best[to], best[from], span);
            }
            ends += run.isLikely(joints.get(to)) ? 1 : 0;
        }
    }

    private Span span(int from, int to) {
        return new Span(from, to, run.strain(from, to), run.strain(to));
    }

    /**
     * The better of two ways to a joint. To hear a clause is dear: it is not done where even all that it tells could be true
     * without making its way the better one.
     *
     * @param known the best so far; null where there is none
     */
    private Way better(Way known, Way before, Span span) {
        var clause = run.clause(span.from(), span.to());
        if (clause.isEmpty()) {
            double worth = before.worth() - NOTHING;
            return known == null || worth > known.worth() ? new Way(worth, before, List.of(), before.after()) : known;
        }
        long told = told(clause.get());
        if (known != null && before.worth() + worth(told * TRUE, span) <= known.worth()) {
            return known;
        }
        var step = heard(before.after(), clause.get(), span);
        double worth = before.worth() + worth(told * each(step), span);
        if (known != null && worth <= known.worth()) {
            return known;
        }
        return new Way(worth, before, List.of(new Cut(step, span.from())), step.after());
    }

    private Step heard(Course at, Clause clause, Span span) {
        boolean bearable =
                span.strain() <= BEARABLE && run.strain(span.from()) <= BEARABLE && span.strainAtEnd() <= BEARABLE;
        var heard = listening.hear(at, clause);
        return bearable ? heard : heard.doubted();
    }

    private double worth(double told, Span span) {
        return told - STRAIN * span.all() - CLAUSE + (run.isLikely(span.to()) ? LIKELY : 0);
    }

    /** How many things a clause tells. */
    private static long told(Clause clause) {
        return clause.units().stream()
                .filter(read -> !(read.unit() instanceof Constituent.Small) && !read.is(Constituent.Unknown.class))
                .count();
    }

    private static double each(Step step) {
        return step.heard()
                .verdict()
                .map(verdict -> worth(verdict, step.whole()))
                .orElse(0.0);
    }

    private static double worth(Verdict verdict, boolean whole) {
        if (verdict instanceof Verdict.Agrees) {
            return TRUE;
        }
        if (verdict instanceof Verdict.Contradicts) {
            return whole ? WRONG : WRONG_IN_GIST;
        }
        return verdict instanceof Verdict.InPart ? IN_PART : OPEN;
    }
}
