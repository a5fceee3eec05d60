package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.fingering.Gripped;
import groundbass.fingering.Hand;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Arrival;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a hand holds at once lies within its reach. Limits are those of an average hand (rule: hand-reach);
 * open strings cost no reach.
 */
final class HandSpans implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return Stream.concat(together(evidence), hammered(evidence));
    }

    private static Stream<Finding> together(Evidence evidence) {
        return evidence.fingering().grips().stream()
                .filter(gripped -> gripped.grip().stopped().getCount() > 1)
                .flatMap(gripped -> together(evidence, gripped).stream());
    }

    private static Optional<Finding> together(Evidence evidence, Gripped gripped) {
        var frets = gripped.grip().stopped();
        var notes = gripped.notes().stream()
                .map(evidence::note)
                .sorted((one, two) -> one.index() - two.index())
                .toList();
        return finding(evidence, notes, frets.getMin(), frets.getMax());
    }

    /** The finger that is hammered from, or pulled to, stays where it is. */
    private static Stream<Finding> hammered(Evidence evidence) {
        return Stream.of(Arrival.Kind.HAMMER, Arrival.Kind.PULL)
                .flatMap(kind -> FrettedArrivals.of(evidence, kind))
                .filter(from -> from.source() > 0 && from.target() > 0)
                .flatMap(from -> finding(
                        evidence,
                        List.of(from.note()),
                        Math.min(from.source(), from.target()),
                        Math.max(from.source(), from.target()))
                        .stream());
    }

    private static Optional<Finding> finding(Evidence evidence, List<Played> notes, int low, int high) {
        double reach = evidence.neck().reach(low, high);
        return severity(reach)
                .map(severity -> Finding.of(evidence, code(severity), severity, notes, low, high, Math.round(reach)));
    }

    private static Optional<Severity> severity(double reach) {
        if (reach > Hand.AVERAGE.widest()) {
            return Optional.of(Severity.IMPOSSIBLE);
        }
        if (reach > Hand.AVERAGE.stretched()) {
            return Optional.of(Severity.UNWISE);
        }
        return Optional.empty();
    }

    private static String code(Severity severity) {
        return severity == Severity.IMPOSSIBLE ? "stretch-beyond-hand" : "stretch-hard";
    }
}
