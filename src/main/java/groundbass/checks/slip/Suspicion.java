package groundbass.checks.slip;

import groundbass.performance.Played;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import java.util.List;
import java.util.Optional;

/**
 * A note that may stand where another place was meant.
 *
 * @param bar one that has the other place; empty where none does
 * @param witnesses the notes that have it
 * @param weight what speaks for it (rule: slip-weights)
 */
record Suspicion(Played note, Place meant, Optional<Integer> bar, List<NoteAt> witnesses, double weight) {
    private static final double ENOUGH = 4;
    private static final double ENOUGH_ALONE = 4.5;

    /** One that no other figure speaks for. */
    static Suspicion alone(Played note, Place meant, double weight) {
        return new Suspicion(note, meant, Optional.empty(), List.of(), weight);
    }

    boolean isStrong() {
        return weight >= (bar.isPresent() ? ENOUGH : ENOUGH_ALONE);
    }
}
