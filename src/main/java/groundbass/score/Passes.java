package groundbass.score;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How repeats and endings are played. A stretch runs from a repeat start (or from after the last stretch) to its
 * repeat end or, where it has endings, to the end of the last of them. Stretches do not nest.
 */
public final class Passes {
    public static final int MOST_PASSES = 16;

    private Passes() {}

    /** A bar as it is played: its index in the line and which pass through its stretch this is, from 1. */
    public record Played(int bar, int pass) {}

    /** Signs that contradict one another, at the bar of this index. */
    public record Fault(int bar, Kind kind) {
        /** What is wrong. */
        public enum Kind {
            /** A repeat start inside a stretch that has not ended. */
            START_INSIDE_STRETCH,
            /** A repeat start that no repeat end answers. */
            START_WITHOUT_END,
            /** A bracket inside a bracket. */
            ENDING_INSIDE_ENDING,
            /** A bracket's end without its beginning. */
            END_WITHOUT_ENDING,
            /** A bracket that is never closed. */
            ENDING_NOT_CLOSED,
            /** The brackets of a stretch do not name each pass once, in order. */
            PASSES_NOT_COVERED,
            /** A repeat end whose number is not the number of passes that the brackets name. */
            TIMES_DISAGREE,
            /** A bracket that is not the last has no repeat end, or the last one has one. */
            REPEAT_END_MISPLACED
        }
    }

    /** All faults of these bars' signs, in order; empty where they can be played. */
    public static List<Fault> faults(List<Bar> bars) {
        return new Stretches(bars).faults();
    }

    /** @param bars without {@link #faults} */
    static List<Played> unroll(List<Bar> bars) {
        var played = new ArrayList<Played>();
        for (var stretch : new Stretches(bars).all()) {
            for (int pass = 1; pass <= stretch.passes(); pass++) {
                int thisPass = pass;
                IntStream.rangeClosed(stretch.first(), stretch.last())
                        .filter(bar -> stretch.isPlayed(bar, thisPass))
                        .forEach(bar -> played.add(new Played(bar, thisPass)));
            }
        }
        return List.copyOf(played);
    }

    /** Whether what is played after the bar of this index is not always the bar written after it. */
    public static boolean isSeam(List<Bar> bars, int index) {
        var signs = bars.get(index).repeats();
        if (signs.end().isPresent() || signs.endingEnd() || index + 1 == bars.size()) {
            return true;
        }
        var next = bars.get(index + 1).repeats();
        return next.start() || next.ending().isPresent();
    }
}
