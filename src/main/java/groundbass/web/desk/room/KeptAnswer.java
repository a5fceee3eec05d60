package groundbass.web.desk.room;

import groundbass.text.Messages;
import java.util.List;

/**
 * What became of saving a room as one types, for the page's script.
 *
 * @param saved whether what was sent is what is stored now
 * @param base names what is stored
 * @param at when it was stored, as ISO 8601 has it
 * @param by that somebody else stored it, in words; empty where it was who asks
 * @param others what another window stored, where that is not what was sent
 */
record KeptAnswer(boolean saved, String base, String at, String by, List<Other> others) {
    /** @param field the id of the field; empty where the page has to be opened anew to see it */
    record Other(String field, String label, String stored) {
        static Other of(RoomField field, Messages words) {
            return new Other(field.id(), words.say(field.label()), field.value());
        }
    }
}
