package groundbass.web.desk.revision;

import groundbass.text.Message;
import groundbass.web.desk.room.RoomView;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A revision beside a later state of its lesson.
 *
 * @param later empty where that is what is written now
 * @param others the numbers of those that it can be compared with, the newest first
 * @param lines those that differ
 * @param beside what else differs, in words
 * @param text of the main line, as the revision has it
 */
public record RevisionView(
        RoomView room,
        State earlier,
        Optional<State> later,
        List<Integer> others,
        List<ComparedLine> lines,
        Optional<Message> beside,
        String text) {
    public RevisionView {
        others = List.copyOf(others);
        lines = List.copyOf(lines);
    }

    /** Whether the two say the same. */
    public boolean same() {
        return lines.isEmpty() && beside.isEmpty();
    }

    /** A revision as it is named; {@code by} whom it was kept, where that is not who reads the page. */
    public record State(int number, Instant at, Optional<String> by, String note) {}

    /**
     * The list of them.
     *
     * @param older where those before the last one shown stand
     */
    public record Listed(RoomView room, List<Row> rows, Optional<String> older) {}

    /**
     * A revision in the list.
     *
     * @param by who kept it, where that is not who reads the page
     * @param release the number of the release that was made from it
     * @param brought in what it differs from the one before it; empty for the first, and where it does not
     */
    public record Row(
            int number,
            Instant at,
            Optional<String> by,
            String note,
            Optional<Integer> release,
            Optional<Message> brought) {}

    /** The clauses as one sentence's parts. */
    static Optional<Message> joined(List<Message> clauses) {
        return clauses.stream().reduce((one, next) -> Message.of("publishing.clauses", one, next));
    }
}
