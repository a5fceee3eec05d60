package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repairs;
import groundbass.checks.finding.Rule;
import groundbass.fingering.Gripped;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Arrival;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A hand needs 80 ms and 15 ms a fret to shift, and for more than five frets 150 ms (rule:
 * shift-time). A slide is a shift that one hears, and an open string or a dead note lets the hand go earlier.
 */
final class ShiftsTakeTime implements Rule {
    private static final double FLOOR = 0.08;
    private static final double PER_FRET = 0.015;
    private static final int FAR = 5;
    private static final double FAR_NEEDS = 0.15;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var grips = evidence.fingering().grips();
        return IntStream.range(1, grips.size())
                .filter(i -> isHurried(grips.get(i - 1), grips.get(i)))
                .filter(i -> !slides(evidence, grips.get(i)))
                .mapToObj(i -> finding(evidence, grips.get(i - 1), grips.get(i)));
    }

    private static boolean isHurried(Gripped from, Gripped to) {
        int frets = frets(from, to);
        double seconds = to.start() - from.start();
        boolean late = seconds < FLOOR + PER_FRET * frets || (frets > FAR && seconds < FAR_NEEDS);
        return frets > 0 && late && !from.grip().isFree() && !to.grip().isFree();
    }

    private static int frets(Gripped from, Gripped to) {
        return Math.abs(to.grip().position() - from.grip().position());
    }

    private static boolean slides(Evidence evidence, Gripped to) {
        return to.notes().stream().map(evidence::note).anyMatch(note -> note.note()
                .arrival()
                .filter(arrival -> arrival.kind() == Arrival.Kind.SLIDE)
                .isPresent());
    }

    private static Finding finding(Evidence evidence, Gripped from, Gripped to) {
        Played first = evidence.note(from.notes().get(0));
        Played second = evidence.note(to.notes().get(0));
        long milliseconds = Math.round(1000 * (to.start() - from.start()));
        return Finding.of(
                        evidence,
                        "shift-in-no-time",
                        Severity.UNWISE,
                        List.of(first, second),
                        from.grip().position(),
                        to.grip().position(),
                        milliseconds)
                .with(Repairs.elsewhere(evidence, evidence.passage(first, second)));
    }
}
