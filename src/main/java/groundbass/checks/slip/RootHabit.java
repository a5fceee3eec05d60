package groundbass.checks.slip;

import groundbass.analysis.ToneRole;
import groundbass.checks.finding.Evidence;
import groundbass.performance.Played;

/** Whether a line plays the root wherever a chord begins, as most bass lines do (common practice, no source). */
final class RootHabit {
    private static final double NEARLY_ALWAYS = 0.75;
    private static final int FEWEST = 4;

    private final Evidence evidence;
    private final boolean holds;

    RootHabit(Evidence evidence) {
        this.evidence = evidence;
        var first = evidence.notes().stream().filter(this::isAtChord).toList();
        long roots = first.stream().filter(this::isRoot).count();
        this.holds = first.size() >= FEWEST && roots >= NEARLY_ALWAYS * first.size();
    }

    /** Whether this note begins with its chord, in a line that then plays the root. */
    boolean holdsFor(Played note) {
        return holds && isAtChord(note);
    }

    private boolean isAtChord(Played note) {
        return evidence.analysis()
                .at(note.at())
                .filter(evidence::beginsWithChord)
                .isPresent();
    }

    private boolean isRoot(Played note) {
        return evidence.analysis()
                .at(note.at())
                .filter(tone -> tone.role() == ToneRole.ROOT)
                .isPresent();
    }
}
