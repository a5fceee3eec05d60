package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.score.Arrival.Kind;
import java.util.stream.Stream;

/** A slide moves a stopped finger to another stopped fret (rule: slide-stops). */
final class SlidesMove implements Rule {
    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return FrettedArrivals.of(evidence, Kind.SLIDE)
                .filter(from -> from.source() == from.target() || from.source() == 0 || from.target() == 0)
                .map(from -> FrettedArrivals.finding(evidence, from, code(from)).with(FrettedArrivals.strike(from)));
    }

    private static String code(FrettedArrivals.From from) {
        return from.source() == from.target() ? "slide-not-moving" : "slide-open-string";
    }
}
