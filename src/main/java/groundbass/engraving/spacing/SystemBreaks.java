package groundbass.engraving.spacing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Where systems begin: over the whole piece, the breaks whose costs add up to the least. The costs are those of a person
 * who casts off by hand (rule: casting-off-by-phrase): a section begins a system,
 * a system ends with a phrase, phrases of equal length have equal bars, no bar stands alone, and notes are neither
 * crowded nor scattered. The last system is not stretched.
 */
public final class SystemBreaks {
    private static final double SQUEEZED = 4;
    private static final double CROWDED = 2;
    private static final double PER_CROWDING = 10;
    private static final double STRETCHED_LAST = 0.15;
    private static final double INSIDE_SECTION = 1.6;
    private static final double ODD = 1;
    private static final double THREE = 0.15;
    private static final double NOT_THREE = 0.35;
    private static final double HALF_PHRASE = 0.05;
    private static final double UNEVEN = 0.6;
    private static final double REMAINDER = 0.2;
    private static final double OTHER_DENSITY = 0.7;
    private static final double ACROSS_PHRASES = 0.6;
    private static final double BEFORE_ENDING = 0.05;
    private static final double LONELY = 4;

    /** Gaps narrower than this share of their natural width are crowded. */
    private static final double LEAST_STRETCH = 0.85;

    /** A bar that takes more of its system than this may stand alone. */
    private static final double MOST_ALONE = 0.55;

    /** Systems of more bars are told apart no further. */
    private static final int MOST_BARS = 32;

    private final List<MeasuredBar> full;
    private final List<MeasuredBar> continued;
    private final BarSigns signs;
    private final double width;

    /** The least cost of all up to a bar, by how many bars the system before it has; 0 at the beginning. */
    private final double[][] costs;

    private final int[][] startOf;
    private final int[][] countBefore;

    /** @param continued the bars as they are where they do not begin a system */
    public SystemBreaks(List<MeasuredBar> full, List<MeasuredBar> continued, BarSigns signs, double width) {
        this.full = full;
        this.continued = continued;
        this.signs = signs;
        this.width = width;
        costs = new double[full.size() + 1][MOST_BARS + 1];
        startOf = new int[full.size() + 1][MOST_BARS + 1];
        countBefore = new int[full.size() + 1][MOST_BARS + 1];
        for (var row : costs) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        costs[0][0] = 0;
        for (int first = 0; first < full.size(); first++) {
            extend(first);
        }
    }

    /** The width below which some bar would not fit a system of its own. */
    public static double leastWidth(List<MeasuredBar> full, BarSigns signs) {
        double least = 0;
        for (int i = 0; i < full.size(); i++) {
            least = Math.max(
                    least,
                    signs.prefixWidth(i)
                            + full.get(i).leastWidth()
                            + signs.closing(i, true).width()
                            + signs.warningWidth(i));
        }
        return least + 0.01;
    }

    /** The index of each system's first bar. */
    public List<Integer> firsts() {
        var firsts = new ArrayList<Integer>();
        int count = best(full.size());
        for (int end = full.size(); end > 0; ) {
            int start = startOf[end][count];
            firsts.add(start);
            count = countBefore[end][count];
            end = start;
        }
        Collections.reverse(firsts);
        return firsts;
    }

    private int best(int end) {
        int best = 0;
        for (int count = 1; count <= MOST_BARS; count++) {
            best = costs[end][count] < costs[end][best] ? count : best;
        }
        return best;
    }

    private void extend(int first) {
        double fixed = signs.prefixWidth(first);
        double least = 0;
        double inside = 0;
        for (int last = first; last < full.size(); last++) {
            var bar = last == first ? full.get(last) : continued.get(last);
            least += bar.leastWidth();
            fixed += last == first ? 0 : signs.startWidth(last);
            inside += last > first && beginsSection(last) && !isPickup(last - 1) ? INSIDE_SECTION : 0;
            double room = width - fixed - signs.closing(last, true).width() - signs.warningWidth(last);
            if (least > room) {
                return;
            }
            take(first, last, inside + ending(last) + phrases(first, last) + spacing(first, last, room));
            if (signs.endsStretch(last)) {
                return;
            }
            fixed += signs.closing(last, false).width();
        }
    }

    private void take(int first, int last, double cost) {
        int bars = bars(first, last);
        int count = Math.min(bars, MOST_BARS);
        boolean lonely = bars == 0 || bars == 1 && leavesRoom(first);
        double alone = lonely && !isWholeStretch(first, last) ? LONELY : 0;
        boolean anew = first == 0 || beginsSection(first) || signs.endsStretch(first - 1);
        for (int before = 0; before <= MOST_BARS; before++) {
            double total = costs[first][before] + cost + alone + uneven(before, count, first, anew, last);
            if (total < costs[last + 1][count]) {
                costs[last + 1][count] = total;
                startOf[last + 1][count] = first;
                countBefore[last + 1][count] = before;
            }
        }
    }

    /** What it costs that a system has not as many bars as the one before it. */
    private double uneven(int before, int count, int first, boolean anew, int last) {
        if (first == 0 || before == count) {
            return 0;
        }
        if (anew) {
            return Math.abs(before - count) > 1 && before > 0 ? OTHER_DENSITY : 0;
        }
        boolean ends = signs.endsStretch(last) || beginsSection(last + 1);
        return ends && count < before ? REMAINDER : UNEVEN;
    }

    /** As they are counted: silent bars together are many, and a pickup is none. */
    private int bars(int first, int last) {
        int bars = 0;
        for (int i = first; i <= last; i++) {
            bars += isPickup(i) ? 0 : full.get(i).bars();
        }
        return bars;
    }

    private boolean isPickup(int index) {
        return index == 0 && signs.bar(0).bar().isPickup();
    }

    /** Whether another bar of its kind would stand beside a bar; on narrow paper none may. */
    private boolean leavesRoom(int index) {
        return full.get(index).naturalWidth() < MOST_ALONE * (width - signs.prefixWidth(index));
    }

    private boolean isWholeStretch(int first, int last) {
        return (first == 0 || signs.endsStretch(first - 1)) && signs.endsStretch(last);
    }

    private boolean beginsSection(int index) {
        var bar = signs.bar(index).bar();
        return bar.changes().section().isPresent() || bar.repeats().roadmap().coda();
    }

    /** What it costs to end a system with a bar: nothing after four bars of a section, or where the section ends. */
    private double ending(int last) {
        if (signs.endsStretch(last) || beginsSection(last + 1)) {
            return 0;
        }
        double ending = signs.bar(last + 1).bar().repeats().ending().isPresent() ? BEFORE_ENDING : 0;
        int start = sectionStart(last);
        int bars = bars(start, last);
        if (isInThrees(start, last)) {
            return ending + (bars % 3 == 0 ? THREE : bars % 2 == 0 ? NOT_THREE : ODD);
        }
        if (bars % 4 == 0) {
            return ending;
        }
        return ending + (bars % 2 == 0 ? HALF_PHRASE : ODD);
    }

    /** What it costs to begin or end inside one phrase of four bars and reach into another. */
    private double phrases(int first, int last) {
        int start = sectionStart(last);
        if (start > first || isInThrees(start, last)) {
            return 0;
        }
        int from = bars(start, first - 1);
        int to = bars(start, last);
        boolean whole = from % 4 == 0 && (to % 4 == 0 || signs.endsStretch(last) || beginsSection(last + 1));
        return whole || from / 4 == (to - 1) / 4 ? 0 : ACROSS_PHRASES;
    }

    /** Whether a section is one of three or six bars and the like, which four do not divide. */
    private boolean isInThrees(int start, int last) {
        int end = last;
        while (!signs.endsStretch(end) && !beginsSection(end + 1)) {
            end++;
        }
        int all = bars(start, end);
        return all % 3 == 0 && all % 4 != 0;
    }

    private int sectionStart(int index) {
        int start = index;
        while (start > 0 && !beginsSection(start) && !signs.endsStretch(start - 1)) {
            start--;
        }
        return start;
    }

    /** What it costs to stretch or squeeze these bars to a room. */
    private double spacing(int first, int last, double room) {
        var system = new ArrayList<>(continued.subList(first, last + 1));
        system.set(0, full.get(first));
        double natural = system.stream().mapToDouble(MeasuredBar::naturalWidth).sum();
        if (natural > room) {
            double factor = Springs.factor(system, room);
            double force = StrictMath.log(factor);
            double crowding = LEAST_STRETCH - factor;
            return SQUEEZED * force * force + (crowding > 0 ? CROWDED + PER_CROWDING * crowding : 0);
        }
        double force = StrictMath.log(room / natural);
        return force * force * (last + 1 == full.size() ? STRETCHED_LAST : 1);
    }
}
