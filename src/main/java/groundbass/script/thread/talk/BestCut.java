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
    private static final double WRONG = 0.6;

    private static final double WRONG_IN_GIST = 0.2;
    private static final double IN_PART = 0.4;
    private static final double OPEN = 0.1;

    /** What speaks against one more clause, and for one that ends where its words say so. */
    private static final double CLAUSE = 0.8;

    private static final double LIKELY = 0.3;
    private static final double NOTHING = 0.3;

    /** How much strain weighs, and how much of it a clause may bear that is called wrong. */
    private static final double STRAIN = 1.5;

    /** With more strain than this no clause is heard, unless there is no shorter one. */
    private static final double HOPELESS = 1.2;

    private static final double BEARABLE = 0.5;
    private static final double BEARABLE_AT_END = 0.5;

    private final Run run;
    private final Listening listening;

    BestCut(Run run, Listening listening) {
        this.run = run;
        this.listening = listening;
    }

    /** @param plain whether its words say by themselves that it begins there */
    record Cut(Step step, boolean plain) {}

    /** The best way to a joint. */
    private record Way(double worth, Way before, List<Cut> last, Course after) {}

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
            boolean heard = to == from + 1 || strain(joints.get(from), joints.get(to)) <= HOPELESS;
            var way = heard ? onward(best[from], joints.get(from), joints.get(to)) : best[to];
            boolean better = heard && (best[to] == null || way.worth() > best[to].worth());
            best[to] = better ? way : best[to];
            ends += run.isLikely(joints.get(to)) ? 1 : 0;
        }
    }

    private Way onward(Way way, int from, int to) {
        var clause = run.clause(from, to);
        if (clause.isEmpty()) {
            return new Way(way.worth() - NOTHING, way, List.of(), way.after());
        }
        double strain = run.strain(from, to);
        boolean bearable =
                strain <= BEARABLE && run.strain(from) <= BEARABLE_AT_END && run.strain(to) <= BEARABLE_AT_END;
        var heard = listening.hear(way.after(), clause.get());
        var step = bearable ? heard : heard.doubted();
        double worth = worth(clause.get(), step)
                - STRAIN * (strain + run.strain(to))
                - CLAUSE
                + (run.isLikely(to) ? LIKELY : 0);
        return new Way(way.worth() + worth, way, List.of(new Cut(step, run.isPlain(from))), step.after());
    }

    private double strain(int from, int to) {
        return run.strain(from, to) + run.strain(to);
    }

    private static double worth(Clause clause, Step step) {
        long told = clause.units().stream()
                .filter(read -> !(read.unit() instanceof Constituent.Small) && !read.is(Constituent.Unknown.class))
                .count();
        double each = step.heard()
                .verdict()
                .map(verdict -> worth(verdict, step.whole()))
                .orElse(0.0);
        return told * each;
    }

    private static double worth(Verdict verdict, boolean whole) {
        if (verdict instanceof Verdict.Agrees) {
            return 1;
        }
        if (verdict instanceof Verdict.Contradicts) {
            return whole ? WRONG : WRONG_IN_GIST;
        }
        return verdict instanceof Verdict.InPart ? IN_PART : OPEN;
    }
}
