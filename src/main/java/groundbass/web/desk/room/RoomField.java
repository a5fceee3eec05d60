package groundbass.web.desk.room;

import groundbass.identity.Sha256;
import groundbass.text.Message;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What one field of a room says, as two windows compare it.
 *
 * @param id of the field in its page; empty where it is not one field
 * @param value with line feeds as line ends
 */
public record RoomField(String id, Message label, String value) {
    private static final int DIGITS = 32;

    /** A browser sends line ends as CR LF (HTML standard, "constructing the entry list"), whatever was stored. */
    public RoomField {
        value = value.replace("\r\n", "\n");
    }

    public static RoomField of(String id, String label, String value) {
        return new RoomField(id, Message.of(label), value);
    }

    /** Names what these fields say together, so that a window learns that another one has saved since. */
    public static String digest(List<RoomField> fields) {
        String said = fields.stream()
                .map(field -> field.id() + " " + field.value().length() + "\n" + field.value())
                .collect(Collectors.joining("\n"));
        return Sha256.of(said.getBytes(StandardCharsets.UTF_8)).hex().substring(0, DIGITS);
    }

    /** Those of the stored fields that say something else than what was typed. */
    static List<RoomField> others(List<RoomField> stored, List<RoomField> typed) {
        Map<String, String> mine = typed.stream()
                .collect(Collectors.toMap(RoomField::id, RoomField::value, (one, next) -> one + "\n" + next));
        return stored.stream()
                .filter(field -> !field.value().equals(mine.getOrDefault(field.id(), "")))
                .toList();
    }
}
