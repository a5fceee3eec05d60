package groundbass.checks;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.checks.hand.HandRules;
import groundbass.checks.slip.SlipRules;
import groundbass.score.Copy;
import groundbass.score.Line;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Everything that a teacher would remark on in a line; what players know by name is left alone (rule: groove-figures). */
public final class Checks {
    private static final Comparator<Finding> ORDER = Comparator.comparing(Finding::position)
            .thenComparing(Finding::severity)
            .thenComparing(Finding::code)
            .thenComparing(finding -> finding.passage().to());

    private static final List<Rule> RULES =
            Stream.of(HandRules.all(), SlipRules.all()).flatMap(List::stream).toList();

    private Checks() {}

    /**
     * The findings of a line in its own order, the graver first. What is said of a bar that is written as a copy was
     * said of the bar it copies.
     */
    public static List<Finding> of(Line line) {
        var evidence = new Evidence(line);
        var all = RULES.stream()
                .flatMap(rule -> rule.findings(evidence))
                .filter(finding -> isFirstSaid(finding, line))
                .sorted(ORDER)
                .toList();
        return OneCause.of(all);
    }

    private static boolean isFirstSaid(Finding finding, Line line) {
        return Stream.of(finding.position().bar(), lastBar(finding))
                .map(line::bar)
                .anyMatch(bar -> bar.copy().filter(Copy::isWhole).isEmpty());
    }

    private static int lastBar(Finding finding) {
        var to = finding.passage().to();
        return to.at().isZero() ? to.bar() - 1 : to.bar();
    }
}
