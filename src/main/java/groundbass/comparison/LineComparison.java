package groundbass.comparison;

import groundbass.score.Line;
import java.util.List;

/**
 * What differs between an earlier and a later state of a line. How the text was typed does not count: a bar that is
 * written as a copy and the same bar written out are one bar.
 *
 * @param head whether title, key, tempo, strings or anything else at the head of the line differs
 * @param changes in the order of the later line
 */
public record LineComparison(boolean head, List<Change> changes) {
    public LineComparison {
        changes = List.copyOf(changes);
    }

    public static LineComparison of(Line before, Line after) {
        return new LineComparison(
                !before.header().equals(after.header()),
                BarAlignment.of(before, after).changes());
    }

    /** Whether the two are one to a reader and a listener. */
    public boolean isSame() {
        return !head && changes.isEmpty();
    }
}
