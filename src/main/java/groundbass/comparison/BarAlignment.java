package groundbass.comparison;

import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.score.Note;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which bar of the earlier line became which of the later one: the pairing, in order, that keeps the most bars as they
 * are and then pairs the most alike. Found with the table of sequence alignment (Needleman and Wunsch 1970) between the
 * first and the last bar that differ.
 */
final class BarAlignment {
    private static final long SAME = 1_000_000;
    private static final int MOST_LIKE = 98;

    /** Beyond so many pairs likeness is no longer weighed, only sameness. */
    private static final long MOST_WEIGHED = 250_000;

    private final Line before;
    private final Line after;
    private final List<Bar> old;
    private final List<Bar> young;
    private final List<Change> changes = new ArrayList<>();

    private BarAlignment(Line before, Line after) {
        this.before = before;
        this.after = after;
        this.old = before.bars().stream().map(Bar::writtenOut).toList();
        this.young = after.bars().stream().map(Bar::writtenOut).toList();
    }

    static BarAlignment of(Line before, Line after) {
        var alignment = new BarAlignment(before, after);
        alignment.align();
        return alignment;
    }

    List<Change> changes() {
        return changes;
    }

    private void align() {
        int head = same(old, young);
        int tail = Math.min(same(reversed(old), reversed(young)), Math.min(old.size(), young.size()) - head);
        var pairs = pairs(head, old.size() - tail, young.size() - tail);
        int nextOld = head;
        int nextYoung = head;
        for (int[] pair : pairs) {
            unpaired(nextOld, pair[0], nextYoung, pair[1]);
            compare(pair[0], pair[1]);
            nextOld = pair[0] + 1;
            nextYoung = pair[1] + 1;
        }
        unpaired(nextOld, old.size() - tail, nextYoung, young.size() - tail);
    }

    private static int same(List<Bar> one, List<Bar> other) {
        int count = 0;
        while (count < Math.min(one.size(), other.size()) && one.get(count).equals(other.get(count))) {
            count++;
        }
        return count;
    }

    private static List<Bar> reversed(List<Bar> bars) {
        var turned = new ArrayList<>(bars);
        Collections.reverse(turned);
        return turned;
    }

    /** Pairs of indices that belong together, in order. */
    private List<int[]> pairs(int from, int oldEnd, int youngEnd) {
        int rows = oldEnd - from;
        int columns = youngEnd - from;
        boolean weighed = (long) rows * columns <= MOST_WEIGHED;
        var best = new long[rows + 1][columns + 1];
        for (int i = rows - 1; i >= 0; i--) {
            for (int j = columns - 1; j >= 0; j--) {
                long paired = best[i + 1][j + 1] + worth(from + i, from + j, weighed);
                best[i][j] = Math.max(paired, Math.max(best[i + 1][j], best[i][j + 1]));
            }
        }
        return walk(best, from, weighed);
    }

    private List<int[]> walk(long[][] best, int from, boolean weighed) {
        var pairs = new ArrayList<int[]>();
        int i = 0;
        int j = 0;
        while (i < best.length - 1 && j < best[0].length - 1) {
            if (best[i][j] == best[i + 1][j + 1] + worth(from + i, from + j, weighed)) {
                pairs.add(new int[] {from + i++, from + j++});
            } else if (best[i][j] == best[i + 1][j]) {
                i++;
            } else {
                j++;
            }
        }
        return pairs;
    }

    /** What it is worth to take two bars for one: never nothing, so that a bar written anew counts as changed. */
    private long worth(int i, int j, boolean weighed) {
        var one = old.get(i);
        var other = young.get(j);
        if (one.equals(other)) {
            return SAME;
        }
        return weighed ? 1 + likeness(one.notes(), other.notes()) : 1;
    }

    private static int likeness(List<Note> one, List<Note> other) {
        Set<Note> shared = new HashSet<>(one);
        shared.retainAll(new HashSet<>(other));
        int most = Math.max(one.size(), other.size());
        return most == 0 ? MOST_LIKE : MOST_LIKE * shared.size() / most;
    }

    private void unpaired(int oldFrom, int oldTo, int youngFrom, int youngTo) {
        if (oldFrom < oldTo) {
            changes.add(new Change.Removed(oldFrom + before.firstNumber(), oldTo - 1 + before.firstNumber()));
        }
        if (youngFrom < youngTo) {
            changes.add(new Change.Inserted(youngFrom + after.firstNumber(), youngTo - 1 + after.firstNumber()));
        }
    }

    private void compare(int i, int j) {
        var meter = after.inForce().get(j).meter();
        var differences =
                BarDifferences.between(old.get(i), young.get(j), before.header().tuning(), meter);
        if (!differences.isEmpty()) {
            changes.add(new Change.Changed(i + before.firstNumber(), j + after.firstNumber(), differences));
        }
    }
}
