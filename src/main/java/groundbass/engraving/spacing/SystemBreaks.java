package groundbass.engraving.spacing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Where systems begin: over the whole piece, the breaks whose badness adds up to the least. Squeezing counts more than
 * stretching; a section likes to begin a system, a system likes to end with a phrase, and the last one is not
 * stretched.
 */
public final class SystemBreaks {
    private static final double SQUEEZED = 2.5;
    private static final double INSIDE_SECTION = 0.04;
    private static final double ODD = 0.12;
    private static final double HALF_PHRASE = 0.02;
    private static final double BEFORE_ENDING = 0.05;
    private static final double LONELY = 0.4;
    private static final double LONELY_FILL = 0.35;

    /** How full a last system must be to be justified (rule: last-system-ragged). */
    static final double JUSTIFIED_FILL = 0.68;

    private final List<MeasuredBar> full;
    private final List<MeasuredBar> continued;
    private final BarSigns signs;
    private final double width;
    private final double[] badness;
    private final int[] startOf;

    /** @param continued the bars as they are where they do not begin a system */
    public SystemBreaks(List<MeasuredBar> full, List<MeasuredBar> continued, BarSigns signs, double width) {
        this.full = full;
        this.continued = continued;
        this.signs = signs;
        this.width = width;
        badness = new double[full.size() + 1];
        startOf = new int[full.size() + 1];
        Arrays.fill(badness, 1, badness.length, Double.POSITIVE_INFINITY);
        for (int first = 0; first < full.size(); first++) {
            if (badness[first] < Double.POSITIVE_INFINITY) {
                extend(first);
            }
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
        for (int end = full.size(); end > 0; end = startOf[end]) {
            firsts.add(startOf[end]);
        }
        Collections.reverse(firsts);
        return firsts;
    }

    private void extend(int first) {
        double fixed = signs.prefixWidth(first);
        double natural = 0;
        double least = 0;
        for (int last = first; last < full.size(); last++) {
            var bar = last == first ? full.get(last) : continued.get(last);
            natural += bar.naturalWidth();
            least += bar.leastWidth();
            fixed += last == first ? 0 : signs.startWidth(last);
            double room = width - fixed - signs.closing(last, true).width() - signs.warningWidth(last);
            if (least > room) {
                return;
            }
            double total = badness[first] + cost(first, last, room / natural);
            if (total < badness[last + 1]) {
                badness[last + 1] = total;
                startOf[last + 1] = first;
            }
            if (signs.endsStretch(last)) {
                return;
            }
            fixed += signs.closing(last, false).width();
        }
    }

    /** A system likes to end with a phrase: after four bars of a section, or at least after two. */
    private double phrase(int next) {
        int bars = next - sectionStart(next - 1);
        if (bars % 4 == 0) {
            return 0;
        }
        return bars % 2 == 0 ? HALF_PHRASE : ODD;
    }

    /** A pickup belongs to no phrase. */
    private int sectionStart(int index) {
        int start = index;
        while (start > 0 && signs.bar(start).bar().changes().section().isEmpty()) {
            start--;
        }
        return start == 0 && signs.bar(0).bar().isPickup() ? 1 : start;
    }

    private double cost(int first, int last, double stretch) {
        int next = last + 1;
        double force = StrictMath.log(stretch);
        if (signs.endsStretch(last)) {
            double loose = 1 / stretch < LONELY_FILL && first > 0 ? LONELY : 0;
            return loose + (force < 0 ? SQUEEZED * force * force : 0);
        }
        double cost = force < 0 ? SQUEEZED * force * force : force * force;
        var changes = signs.bar(next).bar().changes();
        cost += changes.section().isPresent() ? 0 : INSIDE_SECTION;
        cost += signs.bar(next).bar().repeats().ending().isPresent() ? BEFORE_ENDING : 0;
        return cost + phrase(next);
    }
}
