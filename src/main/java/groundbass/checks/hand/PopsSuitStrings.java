package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.remark.Severity;
import groundbass.score.Technique;
import java.util.List;
import java.util.stream.Stream;

/** A finger hooks under the upper strings; the lowest leaves it little room (rule: pop-strings). */
final class PopsSuitStrings implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        int lowest = evidence.line().header().tuning().size();
        return evidence.notes().stream()
                .filter(note ->
                        note.note().pluck().filter(Technique.POP::equals).isPresent())
                .filter(note -> note.string() >= Math.min(lowest, 4))
                .map(note -> Finding.of(
                        evidence,
                        "pop-on-low-string",
                        Severity.WORTH_A_LOOK,
                        List.of(note),
                        evidence.line().header().tuning().typed(note.string())));
    }
}
