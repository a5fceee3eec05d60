package groundbass.web.desk.room;

import groundbass.text.Message;

/**
 * A room as the list of rooms shows it.
 *
 * @param way its address
 * @param here whether its page is the one that shows the list
 */
public record RoomRow(Room room, String way, RoomState state, boolean here) {
    public Message title() {
        return room.title();
    }

    /** What is to be done there. */
    public Message said() {
        return Message.of("desk.room.state." + state.word());
    }
}
