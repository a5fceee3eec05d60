package groundbass.linetext.typed;

import groundbass.remark.Span;
import groundbass.score.Count;
import java.util.List;
import java.util.Optional;

/** A line of counts and what is played on them. Each of several counts has the whole figure. */
public record CountLine(Span span, List<Target> targets, List<Event> events) {

    /** The count that a figure starts on, and the one in whose beat it ends where that is said. */
    public record Target(Span span, Count from, Optional<Count> last) {}

    public int shares() {
        return events.stream().mapToInt(Event::shares).sum();
    }
}
