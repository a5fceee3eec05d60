package groundbass.script.thread.stage;

import groundbass.script.grammar.Constituent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Where a clause says that something is.
 *
 * @param bars empty where none was said
 * @param extent whether bars were said, and how
 * @param time within each bar; empty for all of it
 */
public record Scope(List<Integer> bars, Extent extent, Optional<Time> time) {
    public static final Scope NOTHING = new Scope(List.of(), Extent.UNSAID, Optional.empty());

    public enum Extent {
        UNSAID,
        SAID,
        EACH,
        WHOLE
    }

    /** A time within a bar. */
    public sealed interface Time {}

    record Beats(List<Integer> numbers) implements Time {}

    record LastBeats(int many) implements Time {}

    /** From a beat, or a part of it, to the end of the bar. */
    record Onward(int from, int part) implements Time {}

    public record Parts(OptionalInt beat, List<Integer> parts) implements Time {}

    record Half(int nth) implements Time {}

    public boolean isSaid() {
        return extent != Extent.UNSAID;
    }

    Scope in(List<Integer> newBars, Extent newExtent) {
        return new Scope(newBars, newExtent, time);
    }

    Scope at(Time newTime) {
        return new Scope(bars, extent, Optional.of(newTime));
    }

    /** "On one and on two"; empty where two times are not of a kind. */
    static Optional<Time> both(Time one, Time other) {
        if (one instanceof Beats first && other instanceof Beats second) {
            var numbers = Stream.concat(first.numbers().stream(), second.numbers().stream())
                    .distinct()
                    .sorted()
                    .toList();
            return Optional.of(new Beats(numbers));
        }
        return Optional.empty();
    }

    static Optional<Time> time(Constituent unit) {
        if (unit instanceof Constituent.Beats beats) {
            return Optional.of(new Beats(beats.numbers()));
        }
        if (unit instanceof Constituent.LastBeats last) {
            return Optional.of(new LastBeats(last.many()));
        }
        if (unit instanceof Constituent.Parts parts) {
            return Optional.of(new Parts(parts.beat(), parts.parts()));
        }
        return unit instanceof Constituent.HalfBar half ? Optional.of(new Half(half.nth())) : Optional.empty();
    }
}
