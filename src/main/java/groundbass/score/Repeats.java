package groundbass.score;

import java.util.Objects;
import java.util.Optional;

/**
 * The repeat signs of one bar: what stands at its left and what at its right.
 *
 * @param ending the bracket that begins at this bar
 * @param endingEnd whether a bracket ends with this bar
 * @param roadmap signs of jumps at this bar
 */
public record Repeats(
        boolean start, Optional<Ending> ending, boolean endingEnd, Optional<RepeatEnd> end, Roadmap roadmap) {
    public static final Repeats NONE = new Repeats(false, Optional.empty(), false, Optional.empty(), Roadmap.NONE);

    /** The passes through the repeated stretch on which the bars under this bracket are played, from 1. */
    public record Ending(int firstPass, int lastPass) {
        public Ending {
            if (!isPasses(firstPass, lastPass)) {
                throw new IllegalArgumentException("no such passes: " + firstPass + " to " + lastPass);
            }
        }

        public static boolean isPasses(int firstPass, int lastPass) {
            return firstPass >= 1 && firstPass <= lastPass && lastPass <= Passes.MOST_PASSES;
        }

        public boolean isPlayedOn(int pass) {
            return pass >= firstPass && pass <= lastPass;
        }

        @Override
        public String toString() {
            return firstPass == lastPass ? "" + firstPass : firstPass + "-" + lastPass;
        }
    }

    /**
     * The sign that sends the player back.
     *
     * @param times how often the stretch is played in all; empty where the sign stands alone: twice, or as often as
     *     the endings say
     */
    public record RepeatEnd(Optional<Integer> times) {
        public static final RepeatEnd PLAIN = new RepeatEnd(Optional.empty());

        public RepeatEnd {
            Objects.requireNonNull(times);
            if (times.filter(n -> n < 2 || n > Passes.MOST_PASSES).isPresent()) {
                throw new IllegalArgumentException("a repeat is played 2 to " + Passes.MOST_PASSES + " times");
            }
        }
    }

    public Repeats {
        Objects.requireNonNull(ending);
        Objects.requireNonNull(end);
        Objects.requireNonNull(roadmap);
    }

    public Repeats withStart() {
        return new Repeats(true, ending, endingEnd, end, roadmap);
    }

    public Repeats with(Ending newEnding) {
        return new Repeats(start, Optional.of(newEnding), endingEnd, end, roadmap);
    }

    public Repeats withEndingEnd() {
        return new Repeats(start, ending, true, end, roadmap);
    }

    public Repeats with(RepeatEnd newEnd) {
        return new Repeats(start, ending, endingEnd, Optional.of(newEnd), roadmap);
    }

    public Repeats with(Roadmap newRoadmap) {
        return new Repeats(start, ending, endingEnd, end, newRoadmap);
    }
}
