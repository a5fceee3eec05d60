package groundbass.walkthrough.words;

import groundbass.score.Direction.Hairpin;
import groundbass.score.Direction.Loudness;
import groundbass.score.Dynamic;
import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How loud each bar of a line begins. */
public final class RunningLoudness {
    private final List<Optional<Dynamic>> before = new ArrayList<>();

    public RunningLoudness(Line line) {
        Optional<Dynamic> last = Optional.empty();
        for (var bar : line.bars()) {
            before.add(last);
            for (var direction : bar.directions()) {
                if (direction instanceof Loudness loudness) {
                    last = Optional.of(loudness.dynamic());
                } else if (direction instanceof Hairpin) { // where it leads, only a sign tells
                    last = Optional.empty();
                }
            }
        }
    }

    /** The loudness that holds where the bar of an index begins; empty where no sign says it. */
    public Optional<Dynamic> before(int bar) {
        return before.get(bar);
    }
}
