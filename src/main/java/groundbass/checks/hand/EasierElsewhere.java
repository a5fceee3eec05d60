package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repairs;
import groundbass.checks.finding.Rule;
import groundbass.fingering.Alternative;
import groundbass.fingering.Cost;
import groundbass.fingering.Cost.Part;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Passage;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where the same notes of a bar lie much better elsewhere, the writer may want to know (weights of the fingering search;
 * what counts as much better is common practice, no source).
 */
final class EasierElsewhere implements Rule {
    /** In fret-long shifts: less than this is taste. */
    private static final double MUCH = 6;

    private static final double SHARE = 0.5;
    private static final int FEWEST_NOTES = 3;

    /** The worst ones first; more at once would be a list and no help. */
    private static final int MOST_BARS = 8;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var line = evidence.line();
        var moving = moving(evidence);
        return moving.keySet().stream()
                .filter(number -> line.bar(number).copy().isEmpty())
                .filter(number -> line.bar(number).notes().size() >= FEWEST_NOTES)
                .filter(number -> moving.get(number) >= MUCH)
                .sorted(Comparator.comparing((Integer number) -> -moving.get(number))
                        .thenComparing(number -> number))
                .limit(MOST_BARS)
                .flatMap(number -> finding(evidence, Passage.bar(number)).stream());
    }

    /** What the hand's movements cost in each bar. */
    private static Map<Integer, Double> moving(Evidence evidence) {
        var bars = new HashMap<Integer, Double>();
        for (var gripped : evidence.fingering().grips()) {
            int bar = gripped.notes().get(0).position().bar();
            bars.merge(bar, moving(gripped.cost()), Double::sum);
        }
        return bars;
    }

    private static Optional<Finding> finding(Evidence evidence, Passage bar) {
        return evidence.others(bar, 1).stream()
                .filter(other -> other.saved() >= MUCH && other.saved() >= SHARE * asWritten(other))
                .findFirst()
                .map(other -> finding(evidence, other));
    }

    private static double moving(Cost cost) {
        return cost.of(Part.SHIFT) + cost.of(Part.HURRY) + cost.of(Part.STRETCH) + cost.of(Part.HOP);
    }

    private static double asWritten(Alternative other) {
        return other.cost().total() + other.saved();
    }

    private static Finding finding(Evidence evidence, Alternative other) {
        List<Played> notes =
                other.stops().stream().map(stop -> evidence.note(stop.note())).toList();
        String code = other.underOneHand() ? "lies-under-one-hand" : "lies-better-elsewhere";
        return Finding.of(evidence, code, Severity.WORTH_A_LOOK, notes, other.position())
                .with(Repairs.places(evidence, other));
    }
}
