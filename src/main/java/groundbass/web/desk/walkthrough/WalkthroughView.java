package groundbass.web.desk.walkthrough;

import groundbass.web.desk.room.RoomView;
import java.util.List;

/** The walkthrough of a lesson, to be read and reworded. */
public record WalkthroughView(RoomView room, WalkthroughText told) {
    /** One line of the lesson; {@code number} is 0 for the main one. */
    public record Part(int number, String title, List<Row> steps, List<Row> lost) {}

    /**
     * A step.
     *
     * @param id    of its field
     * @param told  what the program says; empty where its notes are no longer there
     * @param said  what is read: the educator's words where there are any
     */
    public record Row(String id, String anchor, int bar, String told, String said) {
        public boolean isEdited() {
            return !told.equals(said);
        }
    }
}
