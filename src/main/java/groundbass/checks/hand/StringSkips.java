package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Technique;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Two fingers or a pick skip strings only so fast: more than eight notes a second are hard (rule:
 * string-skip). Thumb and pop stand on their strings and skip at ease.
 */
final class StringSkips implements Rule {
    private static final double QUICK = 1 / 8.0;
    private static final Set<Technique> SKIPPING =
            Set.of(Technique.FINGER, Technique.INDEX, Technique.MIDDLE, Technique.PICK, Technique.THUMB);

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var notes = evidence.notes();
        return IntStream.range(1, notes.size())
                .filter(i -> skips(notes.get(i - 1), notes.get(i)))
                .mapToObj(i -> Finding.of(
                        evidence, "string-skip-fast", Severity.WORTH_A_LOOK, List.of(notes.get(i - 1), notes.get(i))));
    }

    private static boolean skips(Played from, Played to) {
        double seconds = to.start() - from.start();
        return Math.abs(to.string() - from.string()) >= 2
                && seconds > 0
                && seconds < QUICK - 1e-9
                && Stream.of(from, to)
                        .allMatch(note ->
                                note.note().pluck().filter(SKIPPING::contains).isPresent());
    }
}
