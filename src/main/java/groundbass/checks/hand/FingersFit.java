package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.fingering.Hand;
import groundbass.remark.Severity;
import java.util.List;
import java.util.stream.Stream;

/**
 * The fingers that are written go together in one grip: none stops two frets, none crosses another (rule:
 * fingers-of-a-grip).
 */
final class FingersFit implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.fingering().grips().stream()
                .filter(gripped -> !gripped.grip().possible())
                .filter(gripped -> isWithinReach(
                        evidence,
                        gripped.grip().stopped().getMin(),
                        gripped.grip().stopped().getMax()))
                .filter(gripped -> gripped.grip().stopped().getCount() > 1)
                .map(gripped -> gripped.notes().stream()
                        .map(evidence::note)
                        .sorted((one, two) -> one.index() - two.index())
                        .toList())
                .map(notes -> Finding.of(evidence, "fingers-do-not-fit", Severity.UNWISE, List.copyOf(notes)));
    }

    private static boolean isWithinReach(Evidence evidence, int low, int high) {
        return evidence.neck().reach(low, high) <= Hand.AVERAGE.widest();
    }
}
