package groundbass.walkthrough;

import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;

/** Which bar is played before each bar when that is played first: of a second ending not the one that stands before it. */
final class BarBefore {
    private BarBefore() {}

    /** Indexes of bars; of what is played first, and of what is never played, the one that stands before it. */
    static List<Integer> all(Line line) {
        var before = new ArrayList<Integer>();
        for (int i = 0; i < line.bars().size(); i++) {
            before.add(Math.max(0, i - 1));
        }
        var seen = new boolean[before.size()];
        int last = 0;
        for (var played : line.played()) {
            if (!seen[played.bar()]) {
                seen[played.bar()] = true;
                before.set(played.bar(), last);
            }
            last = played.bar();
        }
        return before;
    }
}
