package groundbass.linetext.assemble;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.RawBar.Sign;
import groundbass.remark.Span;
import groundbass.score.Bar;
import groundbass.score.Meter;
import groundbass.score.Passes;
import groundbass.score.Passes.Fault;
import groundbass.score.Repeats;
import groundbass.score.Roadmap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * Makes repeats and endings agree, then the signs of jumps: where they do not, it says so and leaves those of that bar
 * out.
 */
final class SignAgreement {
    private final List<RawBar> bars;
    private final Problems problems;

    SignAgreement(List<RawBar> bars, Problems problems) {
        this.bars = bars;
        this.problems = problems;
    }

    List<Repeats> agreed() {
        var signs = new ArrayList<Repeats>();
        bars.forEach(bar -> signs.add(bar.before.repeats));
        closeEndings(signs);
        settle(signs, Passes::repeatFaults, each -> Repeats.NONE.with(each.roadmap()));
        settle(signs, Passes::jumpFaults, each -> each.with(Roadmap.NONE));
        return signs;
    }

    /** Tells the first faults; what leaving signs out brings about is no news. */
    private void settle(List<Repeats> signs, Function<List<Bar>, List<Fault>> check, UnaryOperator<Repeats> without) {
        var faults = check.apply(skeleton(signs));
        faults.forEach(fault -> problems.add(BarProblems.of(fault.kind(), span(fault))));
        while (!faults.isEmpty()) {
            faults.forEach(fault -> signs.set(fault.bar(), without.apply(signs.get(fault.bar()))));
            faults = check.apply(skeleton(signs));
        }
    }

    /** A bracket ends where its repeat end stands, whether or not that is said as well. */
    private static void closeEndings(List<Repeats> signs) {
        boolean open = false;
        for (int i = 0; i < signs.size(); i++) {
            var here = signs.get(i);
            open |= here.ending().isPresent();
            if (open && here.end().isPresent()) {
                signs.set(i, here.withEndingEnd());
            }
            open &= !signs.get(i).endingEnd();
        }
    }

    static boolean isSeam(List<Repeats> signs, int index) {
        int end = Math.min(signs.size(), index + 2);
        return Passes.isSeam(skeleton(signs.subList(index, end)), 0);
    }

    /** Bars with nothing but these signs. */
    private static List<Bar> skeleton(List<Repeats> signs) {
        return signs.stream().map(SKELETON::with).toList();
    }

    private static final Bar SKELETON = Bar.of(Meter.COMMON, Collections.emptyList());

    private Span span(Fault fault) {
        var before = bars.get(fault.bar()).before;
        return Stream.concat(signs(fault.kind()).stream(), Stream.of(Sign.values()))
                .flatMap(sign -> Optional.ofNullable(before.signs.get(sign)).stream())
                .findFirst()
                .orElse(bars.get(fault.bar()).head.span());
    }

    private static List<Sign> signs(Fault.Kind kind) {
        return switch (kind) {
            case START_INSIDE_STRETCH, START_WITHOUT_END -> List.of(Sign.START);
            case ENDING_INSIDE_ENDING, ENDING_NOT_CLOSED, PASSES_NOT_COVERED -> List.of(Sign.ENDING);
            case END_WITHOUT_ENDING -> List.of(Sign.ENDING_END);
            case TIMES_DISAGREE, REPEAT_END_MISPLACED -> List.of(Sign.END, Sign.ENDING_END);
            case NO_SEGNO, NO_FINE, NO_CODA, NEVER_PLAYED -> List.of(Sign.JUMP);
            case JUMP_SIGN_TWICE, NO_JUMP, JUMP_INSIDE_REPEAT ->
                List.of(Sign.FINE, Sign.TO_CODA, Sign.CODA, Sign.SEGNO, Sign.JUMP);
        };
    }
}
