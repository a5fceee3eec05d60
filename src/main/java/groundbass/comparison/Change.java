package groundbass.comparison;

import groundbass.score.Count;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** One thing that differs between an earlier and a later line. Bars go by the numbers that they have in their line. */
sealed interface Change {
    /** Bars of the later line that the earlier one does not have, from {@code first} to {@code last}. */
    record Inserted(int first, int last) implements Change {}

    /** Bars of the earlier line that the later one no longer has, from {@code first} to {@code last}. */
    record Removed(int first, int last) implements Change {}

    /**
     * A bar that is in both and not the same.
     *
     * @param before its number in the earlier line
     * @param after its number in the later line
     * @param differences in order of time, first what holds for the bar as a whole; at least one
     */
    record Changed(int before, int after, List<Difference> differences) implements Change {
        public Changed {
            differences = List.copyOf(differences);
            if (differences.isEmpty()) {
                throw new IllegalArgumentException("a changed bar differs somewhere: " + after);
            }
        }
    }

    /**
     * In what a bar differs at one count.
     *
     * @param at the count, or the last one before it inside a tuplet; empty for the bar as a whole
     */
    record Difference(Optional<Count> at, Set<Aspect> aspects) {
        public Difference {
            aspects = Collections.unmodifiableSet(EnumSet.copyOf(aspects));
        }
    }
}
