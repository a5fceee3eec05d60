package groundbass.linetext.assemble;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.RawBar.Numbered;
import groundbass.remark.Remark;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;

/** Checks the numbers that were typed before bars. */
public final class Numbering {
    private final Problems problems;
    private final Meter meter;

    public Numbering(Problems problems, Meter meter) {
        this.problems = problems;
        this.meter = meter;
    }

    /**
     * One bar's number.
     *
     * @param typed the number that the writer counts by, which may have slipped
     */
    public record Number(int actual, int typed) {}

    /** One slip of a number is one problem: the numbers after it may go on from it. */
    public List<Number> numbers(List<RawBar> bars) {
        var numbers = new ArrayList<Number>();
        int actual = isPickup(bars.get(0)) ? 0 : 1;
        int slip = 0;
        for (var bar : bars) {
            boolean first = numbers.isEmpty();
            var typed = bar.head.number();
            if (typed.isPresent() && typed.get().number() != actual + slip) {
                problems.add(problem(typed.get(), bar, actual, first));
                boolean counts = typed.get().number() > 0 || first;
                slip = counts ? typed.get().number() - actual : slip;
            }
            numbers.add(new Number(actual, actual + slip));
            actual++;
        }
        return numbers;
    }

    private Remark problem(Numbered typed, RawBar bar, int actual, boolean first) {
        if (typed.number() > 0) {
            return BarProblems.wrongNumber(typed.span(), typed.number(), actual);
        }
        if (!first) {
            return BarProblems.pickupNotFirst(typed.span(), actual);
        }
        return offsets(bar, meter).isEmpty()
                ? BarProblems.pickupEmpty(typed.span())
                : BarProblems.pickupFromOne(typed.span());
    }

    private boolean isPickup(RawBar bar) {
        return isZero(bar) && firstCount(bar, meter).isPositive();
    }

    private static boolean isZero(RawBar bar) {
        return bar.head.number().filter(number -> number.number() == 0).isPresent();
    }

    /** The earliest count of a bar. */
    static Fraction firstCount(RawBar bar, Meter meter) {
        return offsets(bar, meter).stream().min(Fraction::compareTo).orElse(Fraction.ZERO);
    }

    private static List<Fraction> offsets(RawBar bar, Meter meter) {
        return bar.counts.stream()
                .flatMap(line -> line.targets().stream())
                .map(target -> target.from().offset(meter))
                .filter(at -> at.isBefore(meter.length()))
                .toList();
    }
}
