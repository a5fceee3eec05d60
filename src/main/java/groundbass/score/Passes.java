package groundbass.score;

import java.util.List;

/**
 * How repeats and endings are played. A stretch runs from a repeat start (or from after the last stretch, rule:
 * first-repeat-start) to its
 * repeat end or, where it has endings, to the end of the last of them. Stretches do not nest. One jump, da capo or dal
 * segno, may follow; after it no repeat is taken again, and of endings the last is played.
 */
public final class Passes {
    public static final int MOST_PASSES = 16;

    private Passes() {}

    /**
     * A bar as it is played: its index in the line and which pass through its stretch this is, from 1; a jump adds one to
     * the passes before it.
     */
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
            REPEAT_END_MISPLACED,
            /** A sign, a coda, a way to it, an end or a jump that the line has already. */
            JUMP_SIGN_TWICE,
            /** A jump to a sign that does not stand before it. */
            NO_SEGNO,
            /** A jump al fine without an end between where it leads and itself. */
            NO_FINE,
            /** A jump al coda without a way to the coda before it, or without a coda right after it. */
            NO_CODA,
            /** A sign that no jump asks for. */
            NO_JUMP,
            /** A jump before the end of its repeat, a coda after the beginning of one, an end in an earlier ending. */
            JUMP_INSIDE_REPEAT,
            /** A jump al fine with bars after it, which nothing leads to. */
            NEVER_PLAYED
        }
    }

    /** All faults of these bars' signs, in order; empty where they can be played. */
    public static List<Fault> faults(List<Bar> bars) {
        var repeats = repeatFaults(bars);
        return repeats.isEmpty() ? jumpFaults(bars) : repeats;
    }

    /** Those of repeats and endings. */
    public static List<Fault> repeatFaults(List<Bar> bars) {
        return new Stretches(bars).faults();
    }

    /**
     * Those of jumps.
     *
     * @param bars without {@link #repeatFaults}
     */
    public static List<Fault> jumpFaults(List<Bar> bars) {
        return new Route(bars).faults();
    }

    /** @param bars without {@link #faults} */
    static List<Played> unroll(List<Bar> bars) {
        return new Route(bars).played();
    }

    /** Whether what is played after the bar of this index is not always the bar written after it. */
    public static boolean isSeam(List<Bar> bars, int index) {
        var signs = bars.get(index).repeats();
        boolean ends =
                signs.end().isPresent() || signs.endingEnd() || signs.roadmap().isSeamAfter();
        if (ends || index + 1 == bars.size()) {
            return true;
        }
        var next = bars.get(index + 1).repeats();
        return next.start() || next.ending().isPresent() || next.roadmap().isSeamBefore();
    }
}
