package groundbass.publishing.preflight;

import groundbass.text.Message;
import java.util.List;

/**
 * What was written and is not in the release that is out or waits for its hour.
 *
 * @param release its number
 * @param out whether readers see that release; otherwise it waits for its hour
 * @param clauses at least one
 */
public record Difference(int release, boolean out, List<Message> clauses) {
    public Message sentence() {
        var all = clauses.stream()
                .reduce((one, next) -> Message.of("publishing.clauses", one, next))
                .orElseThrow();
        return Message.of(out ? "publishing.differs.out" : "publishing.differs.promised", release, all);
    }
}
