package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Rule;
import groundbass.score.Arrival.Kind;
import java.util.List;
import java.util.stream.Stream;

/** A hammer sounds a higher fret of the same string (rule: legato-direction). */
final class HammersRise implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return FrettedArrivals.of(evidence, Kind.HAMMER)
                .filter(from -> from.target() <= from.source())
                .map(from ->
                        FrettedArrivals.finding(evidence, from, "hammer-not-up").with(repairs(from)));
    }

    private static List<Repair> repairs(FrettedArrivals.From from) {
        return from.target() < from.source()
                ? List.of(FrettedArrivals.to(from, Kind.PULL), FrettedArrivals.strike(from))
                : List.of(FrettedArrivals.strike(from));
    }
}
