package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Arrival;
import groundbass.score.Ornaments.Mark;
import java.util.List;
import java.util.stream.Stream;

/**
 * A dead note has nothing to shake, bend or let ring, and a hammer onto it makes no sound of its own (rule:
 * dead-note-plain).
 */
final class DeadNotesStayDead implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> note.note().isDead())
                .flatMap(note -> Stream.concat(ornaments(evidence, note), arrivals(evidence, note)));
    }

    private static Stream<Finding> ornaments(Evidence evidence, Played note) {
        var ornaments = note.note().ornaments();
        return Stream.of(
                        note.note().has(Mark.VIBRATO) ? "vibrato" : "",
                        note.note().has(Mark.RING) ? "ring" : "",
                        ornaments.bend().isPresent() ? "bend" : "",
                        ornaments.slideIn().isPresent() ? "slide in" : "",
                        ornaments.slideOff().isPresent() ? "slide off" : "")
                .filter(word -> !word.isEmpty())
                .map(word -> Finding.of(evidence, "dead-note-sounding", Severity.UNWISE, List.of(note), word));
    }

    private static Stream<Finding> arrivals(Evidence evidence, Played note) {
        return note.note().arrival().map(Arrival::kind).stream()
                .map(kind ->
                        Finding.of(evidence, "dead-note-reached", Severity.WORTH_A_LOOK, List.of(note), kind.word()));
    }
}
