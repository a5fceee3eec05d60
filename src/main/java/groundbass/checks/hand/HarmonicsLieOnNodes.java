package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Repairs;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Place;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A harmonic sounds only over a node of the string: near frets 12 log2(k / (k - j)) for a whole fraction j / k of it
 * (rule: harmonic-nodes).
 */
final class HarmonicsLieOnNodes implements Rule {
    private static final int FARTHEST = 3;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note ->
                        note.fret().isPresent() && !sounds(note, note.fret().getAsInt()))
                .map(note -> Finding.of(
                                evidence,
                                "harmonic-off-node",
                                Severity.IMPOSSIBLE,
                                List.of(note),
                                note.note()
                                        .ornaments()
                                        .harmonic()
                                        .orElseThrow()
                                        .touchedFret()
                                        .orElse(note.fret().getAsInt()))
                        .with(repairs(evidence, note)));
    }

    private static boolean sounds(Played note, int fret) {
        return note.note().ornaments().harmonic().isEmpty() || above(note, fret).isPresent();
    }

    /** What a harmonic there sounds above its open string: the lower, the louder and the easier to find. */
    private static OptionalInt above(Played note, int fret) {
        return note.note().ornaments().harmonic().orElseThrow().semitonesAboveOpen(fret);
    }

    private static List<Repair> repairs(Evidence evidence, Played note) {
        int fret = note.fret().orElseThrow();
        return IntStream.rangeClosed(
                        Math.max(0, fret - FARTHEST),
                        Math.min(fret + FARTHEST, evidence.line().header().frets()))
                .filter(other -> sounds(note, other))
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(other -> Math.abs(other - fret))
                        .thenComparingInt(other -> above(note, other).orElseThrow()))
                .limit(2)
                .map(other -> Repairs.place(evidence, note, Place.of(note.string(), other)))
                .toList();
    }
}
