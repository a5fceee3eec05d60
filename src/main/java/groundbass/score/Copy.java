package groundbass.score;

import java.util.Optional;

/**
 * That a bar was written as the same as an earlier one, or as its shape elsewhere on the neck, kept for simile signs and
 * for printing the text again.
 *
 * @param bar the number of the bar it was taken from
 * @param counts which part of it; empty for the whole bar
 * @param shift how far it is moved on the neck
 */
public record Copy(int bar, Optional<Span> counts, Shift shift) {
    /** A half-open stretch of a bar, from its start; whole beats. */
    public record Span(Fraction from, Fraction to) {
        public Span {
            if (from.isNegative() || !from.isBefore(to)) {
                throw new IllegalArgumentException("a span runs forward: " + from + " to " + to);
            }
        }

        public boolean contains(Fraction at) {
            return !at.isBefore(from) && at.isBefore(to);
        }
    }

    public static Copy of(int bar) {
        return new Copy(bar, Optional.empty(), Shift.NONE);
    }

    public static Copy of(int bar, Fraction from, Fraction to) {
        return new Copy(bar, Optional.of(new Span(from, to)), Shift.NONE);
    }

    public Copy with(Shift newShift) {
        return new Copy(bar, counts, newShift);
    }

    /** Whether the whole bar is the same, at the same places. */
    public boolean isWhole() {
        return counts.isEmpty() && shift.isNone();
    }
}
