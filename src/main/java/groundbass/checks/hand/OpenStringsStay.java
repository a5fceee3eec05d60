package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Ornaments.Mark;
import java.util.List;
import java.util.stream.Stream;

/** Nothing shakes, bends or slides an open string (rule: open-string-stays). */
final class OpenStringsStay implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> note.fret().orElse(-1) == 0)
                .filter(note -> note.note().ornaments().harmonic().isEmpty())
                .flatMap(note -> words(note)
                        .map(word ->
                                Finding.of(evidence, "open-string-moved", Severity.IMPOSSIBLE, List.of(note), word)));
    }

    private static Stream<String> words(Played note) {
        var ornaments = note.note().ornaments();
        return Stream.of(
                        note.note().has(Mark.VIBRATO) ? "vibrato" : "",
                        ornaments.bend().isPresent() ? "bend" : "",
                        ornaments.slideIn().isPresent() ? "slide in" : "",
                        ornaments.slideOff().isPresent() ? "slide off" : "")
                .filter(word -> !word.isEmpty());
    }
}
