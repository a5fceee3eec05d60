package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import java.util.List;
import java.util.stream.Stream;

/** On a bass one bends the upper two strings, and by a tone at most (rule: bend-small). */
final class BendsStaySmall implements Rule {
    private static final int WHOLE_TONE = 4;
    private static final int UPPER_STRINGS = 2;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> note.isStopped() && quarters(note) > 0)
                .filter(note -> note.string() > UPPER_STRINGS || quarters(note) > WHOLE_TONE)
                .map(note -> Finding.of(evidence, code(note), Severity.WORTH_A_LOOK, List.of(note)));
    }

    private static int quarters(Played note) {
        return note.note().ornaments().bend().map(bend -> bend.quarters()).orElse(0);
    }

    private static String code(Played note) {
        return quarters(note) > WHOLE_TONE ? "bend-wide" : "bend-low-string";
    }
}
