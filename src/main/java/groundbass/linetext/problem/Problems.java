package groundbass.linetext.problem;

import groundbass.linetext.source.Limits;
import groundbass.remark.Remark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects problems up to a cap and counts the rest. */
public final class Problems {
    private final List<Remark> found = new ArrayList<>();
    private int more;

    public void add(Remark problem) {
        if (found.size() < Limits.MOST_PROBLEMS) {
            found.add(problem);
        } else {
            more++;
        }
    }

    /** In the order of the text; the last one says how many were left out. */
    public List<Remark> inOrder() {
        found.sort(Comparator.comparing(Remark::span));
        var all = new ArrayList<>(found);
        if (more > 0) {
            var last = found.get(found.size() - 1).span();
            all.add(TextProblems.tooMany(last, more));
        }
        return List.copyOf(all);
    }
}
