package groundbass.web.desk.revision;

import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/**
 * A line that two states of a lesson have otherwise.
 *
 * @param name which line it is
 * @param places where it differs, in order; at least one
 */
public record ComparedLine(Message name, List<Place> places) {
    public ComparedLine {
        places = List.copyOf(places);
    }

    /**
     * One place.
     *
     * @param clause what differs
     * @param before its bars as the earlier state has them, drawn; empty where it has none or they are not drawn
     * @param after the same of the later one
     */
    public record Place(Message clause, Optional<String> before, Optional<String> after) {
        static Place of(Message clause) {
            return new Place(clause, Optional.empty(), Optional.empty());
        }

        public boolean drawn() {
            return before.isPresent() || after.isPresent();
        }
    }
}
