package groundbass.engraving.sheet;

import groundbass.engraving.options.Sign;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Which blocks go on which page: over the whole document, the breaks whose badness adds up to the least. A page likes
 * to be full, a heading keeps the system under it, no system stands alone on the last page, and a short piece after the
 * first, an exercise, is not split.
 */
final class PageBreaks {
    private static final double LONELY = 2;
    private static final double PER_PAGE = 0.5;
    private static final double SPLIT_PIECE = 0.02;
    private static final double SPLIT_EXERCISE = 0.45;

    private final List<Block> blocks;
    private final Room room;
    private final double[] badness;
    private final int[] startOf;

    /**
     * What there is room for.
     *
     * @param gap between systems, at least
     * @param beforeHeading between a system and the heading of the next piece
     * @param page what a page has
     * @param legend how high the legend of these signs is
     */
    record Room(
            double gap, double afterHeading, double beforeHeading, double page, ToDoubleFunction<Set<Sign>> legend) {
        double before(List<Block> blocks, int index) {
            if (blocks.get(index).heading()) {
                return beforeHeading;
            }
            return blocks.get(index - 1).heading() ? afterHeading : gap;
        }
    }

    private PageBreaks(List<Block> blocks, Room room) {
        this.blocks = blocks;
        this.room = room;
        badness = new double[blocks.size() + 1];
        startOf = new int[blocks.size() + 1];
        Arrays.fill(badness, 1, badness.length, Double.POSITIVE_INFINITY);
        for (int first = 0; first < blocks.size(); first++) {
            if (badness[first] < Double.POSITIVE_INFINITY) {
                extend(first);
            }
        }
    }

    static List<List<Block>> fill(List<Block> blocks, Room room) {
        var breaks = new PageBreaks(blocks, room);
        var pages = new ArrayList<List<Block>>();
        for (int end = blocks.size(); end > 0; end = breaks.startOf[end]) {
            pages.add(blocks.subList(breaks.startOf[end], end));
        }
        Collections.reverse(pages);
        return pages;
    }

    private void extend(int first) {
        double used = 0;
        var signs = EnumSet.noneOf(Sign.class);
        for (int last = first; last < blocks.size(); last++) {
            used += (last > first ? room.before(blocks, last) : 0)
                    + blocks.get(last).height();
            signs.addAll(blocks.get(last).signs());
            double all = used + room.legend().applyAsDouble(EnumSet.copyOf(signs));
            boolean keep =
                    last == first || (last == first + 1 && blocks.get(first).heading());
            if (used > room.page() && !keep) {
                return;
            }
            if (!isLoneHeading(first, last) && (all <= room.page() || keep)) {
                take(first, last + 1, all);
            }
            if (last + 1 < blocks.size() && blocks.get(last + 1).newPage()) {
                return;
            }
        }
    }

    /** A heading without its system ends no page, unless that page would be too full with it. */
    private boolean isLoneHeading(int first, int last) {
        return last + 1 < blocks.size() && blocks.get(last).heading();
    }

    private void take(int first, int end, double used) {
        double total = badness[first] + cost(first, end, used);
        if (total < badness[end]) {
            badness[end] = total;
            startOf[end] = first;
        }
    }

    private double cost(int first, int end, double used) {
        boolean last = end == blocks.size();
        boolean wanted = last || blocks.get(end).newPage();
        double free = Math.max(0, 1 - used / room.page());
        double cost = PER_PAGE + (wanted ? 0 : free * free);
        long systems = blocks.subList(first, end).stream()
                .filter(block -> !block.heading())
                .count();
        boolean lonely = first > 0
                && systems == 1
                && !blocks.get(first).newPage()
                && !blocks.get(first).heading();
        cost += lonely ? LONELY : 0;
        boolean splits = !last && !blocks.get(end).heading();
        return cost + (!splits ? 0 : blocks.get(end).piece() > 0 ? SPLIT_EXERCISE : SPLIT_PIECE);
    }
}
