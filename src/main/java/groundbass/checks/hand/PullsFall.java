package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Rule;
import groundbass.score.Arrival.Kind;
import java.util.List;
import java.util.stream.Stream;

/** A pull leaves a stopped fret for a lower one or the open string (rule: legato-direction). */
final class PullsFall implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return FrettedArrivals.of(evidence, Kind.PULL)
                .filter(from -> from.target() >= from.source())
                .map(from ->
                        FrettedArrivals.finding(evidence, from, "pull-not-down").with(repairs(from)));
    }

    private static List<Repair> repairs(FrettedArrivals.From from) {
        return from.target() > from.source()
                ? List.of(FrettedArrivals.to(from, Kind.HAMMER), FrettedArrivals.strike(from))
                : List.of(FrettedArrivals.strike(from));
    }
}
