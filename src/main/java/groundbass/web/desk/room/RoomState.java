package groundbass.web.desk.room;

import java.util.Locale;

/** What is to be done in a room before its lesson goes out. */
public enum RoomState {
    /** Something in it keeps the lesson from going out. */
    OPEN,
    /** Something in it waits to be decided. */
    LOOK,
    /** There is something in it, and nothing is to be said of that. */
    DONE,
    /** Nothing is in it, and nothing has to be. */
    EMPTY;

    /** The end of its class and of its message key. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
