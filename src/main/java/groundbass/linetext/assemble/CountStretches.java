package groundbass.linetext.assemble;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.score.Copy;
import groundbass.score.Count;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Gives every count line of a bar the stretch of time that it fills. */
public final class CountStretches {
    private final BarExtent extent;
    private final Problems problems;
    private final List<Stretch> stretches = new ArrayList<>();

    /**
     * A count line and its time.
     *
     * @param lastBeat the start of the last beat that it fills: a line that begins later shortens this one
     */
    public record Stretch(Target target, CountLine line, Fraction from, Fraction to, Fraction lastBeat) {
        public Copy.Span span() {
            return new Copy.Span(from, to);
        }

        private Stretch until(Fraction newTo) {
            return new Stretch(target, line, from, newTo, lastBeat);
        }
    }

    private CountStretches(BarExtent extent, Problems problems) {
        this.extent = extent;
        this.problems = problems;
    }

    /** In time order, none overlapping another. */
    public static List<Stretch> of(List<CountLine> lines, BarExtent extent, Problems problems) {
        var stretches = new CountStretches(extent, problems);
        lines.forEach(stretches::place);
        return stretches.inOrder();
    }

    private void place(CountLine line) {
        for (var target : line.targets()) {
            var from = target.from().offset(extent.meter());
            if (!extent.contains(from)) {
                problems.add(outside(target.span(), target.from()));
                continue;
            }
            checkOrder(target, from);
            var anchor = anchor(target, from);
            var end = extent.beat(anchor).to();
            stretches.add(new Stretch(target, line, from, end, extent.meter().beatStart(anchor)));
        }
    }

    private void checkOrder(Target target, Fraction from) {
        if (!stretches.isEmpty()) {
            var before = stretches.get(stretches.size() - 1);
            if (from.isBefore(before.from())) {
                problems.add(BarProblems.outOfOrder(
                        target.span(), target.from(), before.target().from()));
            }
        }
    }

    /** A time in the last beat that is filled. */
    private Fraction anchor(Target target, Fraction from) {
        if (target.last().isEmpty()) {
            return from;
        }
        var last = target.last().get();
        var at = last.offset(extent.meter());
        if (at.isBefore(from)) {
            problems.add(BarProblems.backwards(target.span()));
            return from;
        }
        if (!extent.contains(at)) {
            problems.add(outside(target.span(), last));
            return extent.meter().beatStarts().stream()
                    .filter(start -> start.isBefore(extent.to()))
                    .reduce(from, Fraction::max);
        }
        return at;
    }

    private Remark outside(Span span, Count count) {
        boolean whole =
                extent.from().isZero() && extent.to().equals(extent.meter().length());
        return whole
                ? BarProblems.countOutside(span, count, extent.meter(), extent.number())
                : BarProblems.countOutsideShort(span, count, Bounds.from(extent), Bounds.to(extent), extent.number());
    }

    private List<Stretch> inOrder() {
        stretches.sort(Comparator.comparing(Stretch::from));
        var kept = new ArrayList<Stretch>();
        for (var next : stretches) {
            var before = kept.isEmpty() ? Optional.<Stretch>empty() : Optional.of(kept.get(kept.size() - 1));
            if (before.filter(stretch -> stretch.from().equals(next.from())).isPresent()) {
                problems.add(BarProblems.countTwice(
                        next.target().span(),
                        next.target().from(),
                        before.get().target().span()));
                continue;
            }
            if (before.filter(stretch -> stretch.to().isAfter(next.from())).isPresent()) {
                kept.set(kept.size() - 1, shortened(before.get(), next));
            }
            kept.add(next);
        }
        return kept;
    }

    private Stretch shortened(Stretch before, Stretch next) {
        boolean named = before.target().last().isPresent();
        if (next.from().isBefore(before.lastBeat()) || (named && next.from().equals(before.lastBeat()))) {
            problems.add(BarProblems.overlap(next.target().span(), next.target().from(), Bounds.text(before.target())));
        }
        return before.until(next.from());
    }
}
