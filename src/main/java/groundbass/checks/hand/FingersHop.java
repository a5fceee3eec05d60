package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A finger that is written for two strings in a row needs time to hop: under 120 ms is quick (rule:
 * finger-hop). At one fret it may lie across both.
 */
final class FingersHop implements Rule {
    private static final double QUICK = 0.12;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var notes = evidence.notes();
        return IntStream.range(1, notes.size())
                .filter(i -> hops(notes.get(i - 1), notes.get(i)))
                .mapToObj(i -> Finding.of(
                        evidence,
                        "finger-hops",
                        Severity.WORTH_A_LOOK,
                        List.of(notes.get(i - 1), notes.get(i)),
                        notes.get(i).note().ornaments().finger().getAsInt()));
    }

    private static boolean hops(Played from, Played to) {
        var finger = to.note().ornaments().finger();
        double seconds = to.start() - from.start();
        return finger.isPresent()
                && finger.equals(from.note().ornaments().finger())
                && from.string() != to.string()
                && !from.fret().equals(to.fret())
                && seconds > 0
                && seconds < QUICK;
    }
}
