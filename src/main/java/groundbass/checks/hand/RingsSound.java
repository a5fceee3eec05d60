package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.NoteChange;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Ornaments.Mark;
import groundbass.text.Message;
import java.util.List;
import java.util.stream.Stream;

/**
 * A string rings until it is touched: where its next note comes at once, the sign does nothing (rule:
 * ring-until-touched).
 */
final class RingsSound implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> note.note().has(Mark.RING) && isTouchedAtOnce(evidence, note))
                .map(note -> Finding.of(
                                evidence,
                                "ring-cut",
                                Severity.UNWISE,
                                List.of(note),
                                evidence.line().header().tuning().typed(note.string()))
                        .with(Repair.of(
                                Message.of("checks.repair.without", Mark.RING.word()),
                                note.at(),
                                new NoteChange.Without(Mark.RING))));
    }

    private static boolean isTouchedAtOnce(Evidence evidence, Played note) {
        return evidence.after(note).filter(next -> Evidence.meet(note, next)).isPresent();
    }
}
