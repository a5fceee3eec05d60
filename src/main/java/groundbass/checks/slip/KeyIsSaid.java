package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.remark.Severity;
import groundbass.score.Bar;
import groundbass.score.Passage;
import groundbass.text.Message;
import groundbass.theory.Key;
import groundbass.theory.KeyFinding.Certainty;
import groundbass.theory.Scale;
import java.util.List;
import java.util.stream.Stream;

/**
 * The key that is written should hold most notes. Where another holds nearly all and the written one does not, it is worth
 * a look; the finder by itself is too unsure to judge (Krumhansl 1990; the limits are common practice, no source).
 */
final class KeyIsSaid implements Rule {
    private static final double FEW = 0.8;
    private static final double MOST = 0.95;
    private static final int ENOUGH = 16;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var analysis = evidence.analysis();
        boolean oneKey = evidence.line().bars().stream().map(Bar::changes).noneMatch(changes -> changes.key()
                .isPresent());
        if (!oneKey || analysis.tones().size() < ENOUGH) {
            return Stream.empty();
        }
        var written = evidence.line().header().key();
        if (share(evidence, written) >= FEW) {
            return Stream.empty();
        }
        var found = analysis.key();
        return share(evidence, found.best()) >= MOST && found.certainty() != Certainty.OPEN
                ? Stream.of(finding(evidence, written, found.best()))
                : Stream.empty();
    }

    private static double share(Evidence evidence, Key key) {
        return evidence.analysis().weights().shareIn(key.tonic(), Scale.of(key.mode()));
    }

    private static Finding finding(Evidence evidence, Key written, Key found) {
        return new Finding(
                "key-in-question",
                Severity.WORTH_A_LOOK,
                Passage.bar(evidence.line().firstNumber()),
                List.of(),
                Message.of(
                        "checks.key-in-question",
                        written.said(),
                        Math.round(100 * share(evidence, written)),
                        found.said(),
                        Math.round(100 * share(evidence, found))),
                List.of());
    }
}
