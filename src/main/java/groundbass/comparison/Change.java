package groundbass.comparison;

import groundbass.score.Count;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** One thing that differs between an earlier and a later line. Bars go by the numbers that they have in their line. */
public sealed interface Change {
    /** The bars of the earlier line that it is about; empty where that one does not have them. */
    Optional<Bars> earlier();

    /** The same of the later line. */
    Optional<Bars> later();

    /** Some bars of one line, one after the other. */
    record Bars(int first, int last) {}

    /** Bars of the later line that the earlier one does not have, from {@code first} to {@code last}. */
    record Inserted(int first, int last) implements Change {
        @Override
        public Optional<Bars> earlier() {
            return Optional.empty();
        }

        @Override
        public Optional<Bars> later() {
            return Optional.of(new Bars(first, last));
        }
    }

    /** Bars of the earlier line that the later one no longer has, from {@code first} to {@code last}. */
    record Removed(int first, int last) implements Change {
        @Override
        public Optional<Bars> earlier() {
            return Optional.of(new Bars(first, last));
        }

        @Override
        public Optional<Bars> later() {
            return Optional.empty();
        }
    }

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

        @Override
        public Optional<Bars> earlier() {
            return Optional.of(new Bars(before, before));
        }

        @Override
        public Optional<Bars> later() {
            return Optional.of(new Bars(after, after));
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
