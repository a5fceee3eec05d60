package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.NoteChange;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Arrival;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A note that nothing strikes needs a source that still sounds: a rest or a dead note before it leaves nothing to hammer,
 * pull or slide from (rule: legato-direction, legato-adjacent).
 */
final class LegatoFollows implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> note.note().pluck().isEmpty())
                .flatMap(note -> code(evidence, note).map(code -> finding(evidence, note, code)).stream());
    }

    private static Optional<String> code(Evidence evidence, Played note) {
        var before = evidence.before(note);
        if (before.filter(source -> source.note().isDead()).isPresent()) {
            return Optional.of("legato-from-dead");
        }
        return before.filter(source -> !Evidence.meet(source, note)).map(source -> "legato-from-silence");
    }

    private static Finding finding(Evidence evidence, Played note, String code) {
        var kind = note.note().arrival().map(Arrival::kind).orElseThrow();
        var style = note.inForce().style();
        return new Finding(
                        code,
                        Severity.UNWISE,
                        evidence.passage(note),
                        List.of(note.at()),
                        Message.of("checks." + code, kind.word()),
                        List.of())
                .with(Repair.of(
                        Message.of("checks.repair.word", style.word()), note.at(), new NoteChange.ToStroke(style)));
    }
}
