package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.remark.Severity;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Message;
import java.util.List;
import java.util.stream.Stream;

/**
 * Most music repeats in even numbers of bars; three, five or seven between repeat signs may be a bar lost (common
 * practice, no source).
 */
final class RepeatsBalance implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var bars = evidence.line().bars();
        var findings = Stream.<Finding>builder();
        int from = -1;
        for (int i = 0; i < bars.size(); i++) {
            var signs = bars.get(i).repeats();
            from = signs.start() ? i : from;
            boolean closes = signs.end().isPresent() && signs.ending().isEmpty() && !signs.endingEnd();
            if (closes && from >= 0 && isOdd(i - from + 1)) {
                findings.add(finding(evidence, from, i));
            }
            from = signs.end().isPresent() ? -1 : from;
        }
        return findings.build();
    }

    private static boolean isOdd(int bars) {
        return bars > 1 && bars % 2 == 1;
    }

    private static Finding finding(Evidence evidence, int from, int to) {
        int first = evidence.line().firstNumber() + from;
        int last = evidence.line().firstNumber() + to;
        var passage = new Passage(new Position(first, Fraction.ZERO), new Position(last + 1, Fraction.ZERO));
        return new Finding(
                "repeat-odd",
                Severity.WORTH_A_LOOK,
                passage,
                List.of(),
                Message.of("checks.repeat-odd", last - first + 1),
                List.of());
    }
}
