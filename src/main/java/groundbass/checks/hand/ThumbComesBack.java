package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Technique;
import java.util.List;
import java.util.stream.Stream;

/** A thumb goes up through a string after it went down through it (rule: thumb-down-first). */
final class ThumbComesBack implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> strikes(note, Technique.THUMB_UP))
                .filter(note -> evidence.before(note)
                        .filter(before -> strikes(before, Technique.THUMB_DOWN))
                        .isEmpty())
                .map(note -> Finding.of(evidence, "thumb-up-without-down", Severity.WORTH_A_LOOK, List.of(note)));
    }

    private static boolean strikes(Played note, Technique technique) {
        return note.note().pluck().filter(technique::equals).isPresent();
    }
}
