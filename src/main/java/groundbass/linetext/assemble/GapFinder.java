package groundbass.linetext.assemble;

import groundbass.linetext.assemble.CountStretches.Stretch;
import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.remark.Span;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds the time of a bar for which nothing was said: a forgotten line must not turn into a wrong rhythm. */
final class GapFinder {
    private final BarExtent extent;
    private final Problems problems;

    GapFinder(BarExtent extent, Problems problems) {
        this.extent = extent;
        this.problems = problems;
    }

    void check(List<Stretch> stretches, Optional<Copy.Span> copied, Span head) {
        var said = new ArrayList<Copy.Span>();
        stretches.forEach(stretch -> said.add(stretch.span()));
        copied.ifPresent(said::add);
        said.sort(Comparator.comparing(Copy.Span::from));
        var at = extent.from();
        for (var span : said) {
            gap(at, span.from(), stretches, head);
            at = at.max(span.to());
        }
        gap(at, extent.to(), stretches, head);
    }

    private void gap(Fraction from, Fraction to, List<Stretch> stretches, Span head) {
        if (!from.isBefore(to)) {
            return;
        }
        var where = stretches.stream()
                .filter(stretch -> stretch.from().isBefore(from))
                .reduce((earlier, later) -> later)
                .map(stretch -> stretch.target().span())
                .orElse(head);
        var gap = new Copy.Span(from, to);
        problems.add(BarProblems.unsaid(
                where,
                extent.number(),
                Bounds.inWords(gap, extent.meter()),
                Bounds.counts(gap, extent.to(), extent.meter())));
    }
}
