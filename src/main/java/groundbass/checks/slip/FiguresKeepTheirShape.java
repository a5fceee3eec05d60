package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.checks.kin.Kin;
import groundbass.checks.kin.Likeness.Exchanged;
import groundbass.checks.kin.Likeness.NoDeadNote;
import groundbass.checks.kin.Likeness.OtherStroke;
import groundbass.checks.kin.Likeness.OtherTime;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Position;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A figure that others are like but for one thing may hold a slip: a note at another time, two notes that have changed
 * places, a dead note that is not there, another stroke. The second half of the last bar of four, and the last bar, vary on
 * purpose (common practice, no source).
 */
final class FiguresKeepTheirShape implements Rule {
    private static final int FEWEST_LIKE = 2;
    private static final int FEWEST_SHARED = 3;
    private static final int LONG = 7;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var found = new TreeMap<Position, Finding>();
        evidence.kin().stream()
                .filter(kin -> kin.same().isEmpty() && isOdd(evidence, kin) && !mayVary(evidence, kin))
                .flatMap(kin -> finding(evidence, kin).stream())
                .forEach(finding -> found.putIfAbsent(finding.position(), finding));
        return found.values().stream()
                .collect(Collectors.groupingBy(finding -> finding.position().bar()))
                .values()
                .stream()
                .filter(inBar -> inBar.size() == 1)
                .flatMap(List::stream);
    }

    /** Two others speak against a figure, or one that is long and stands before it; bars end more freely. */
    private static boolean isOdd(Evidence evidence, Kin kin) {
        if (kin.like().size() >= FEWEST_LIKE) {
            return kin.shared() >= FEWEST_SHARED;
        }
        return kin.shared() >= LONG
                && kin.like().get(0).bar() < kin.figure().bar()
                && !MeantVariation.isLate(evidence, kin.at());
    }

    private static boolean mayVary(Evidence evidence, Kin kin) {
        return MeantVariation.isTurn(evidence, kin.at())
                || MeantVariation.isEnding(evidence, kin.at())
                || MeantVariation.isAfterChange(evidence, kin.at())
                || (kin.deviation() instanceof Exchanged && MeantVariation.isLate(evidence, kin.at()));
    }

    private static Optional<Finding> finding(Evidence evidence, Kin kin) {
        return evidence.find(kin.at()).flatMap(note -> finding(evidence, kin, note));
    }

    private static Optional<Finding> finding(Evidence evidence, Kin kin, Played note) {
        var figure = kin.figure();
        int like = kin.like().get(0).bar();
        if (kin.deviation() instanceof OtherTime other) {
            return Optional.of(remark(
                    evidence,
                    "figure-at-another-time",
                    List.of(note),
                    like,
                    count(note, figure.from().plus(other.expected()))));
        }
        if (kin.deviation() instanceof Exchanged) {
            var next = evidence.note(figure.at(kin.deviation().note() + 1));
            return Optional.of(remark(evidence, "figure-other-way-round", List.of(note, next), like));
        }
        if (kin.deviation() instanceof NoDeadNote missing) {
            return Optional.of(remark(
                    evidence,
                    "figure-without-dead-note",
                    List.of(note),
                    like,
                    count(note, figure.from().plus(missing.at()))));
        }
        return kin.deviation() instanceof OtherStroke stroke
                ? Optional.of(remark(
                        evidence,
                        "figure-struck-otherwise",
                        List.of(note),
                        like,
                        stroke.expected().word()))
                : Optional.empty();
    }

    private static Finding remark(Evidence evidence, String code, List<Played> notes, Object... args) {
        return Finding.of(evidence, code, Severity.WORTH_A_LOOK, notes, args);
    }

    /** Inside a tuplet, where nobody has a word for the time, the count before it. */
    static String count(Played note, Fraction at) {
        var meter = note.inForce().meter();
        return Count.at(at, meter)
                .orElseGet(() -> new Count((int) at.dividedBy(meter.count()).floor() + 1, 0))
                .toString();
    }
}
