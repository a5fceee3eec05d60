package groundbass.web.desk.room;

import groundbass.text.Message;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The rooms of a lesson on the desk, in the order in which one walks through them: each a page about one part of it. */
public enum Room {
    LINE("mainLine"),
    EXERCISES("exercises"),
    SOUND("groove", "tracks", "settings.tempos", "settings.rounds"),
    NOTES("notes"),
    WALKTHROUGH("walkthrough"),
    SCRIPT("script"),
    FACTS("title", "level", "summary", "facts", "rights", "settings.language"),
    PUBLISH("address", "imprint", "mail", "release", "number");

    private final List<String> fields;

    Room(String... fields) {
        this.fields = List.of(fields);
    }

    /** The room in which a field is mended, named as {@link groundbass.publishing.preflight.LessonRemark} names it. */
    public static Optional<Room> of(String field) {
        return Stream.of(values()).filter(room -> room.holds(field)).findFirst();
    }

    /** Whether it is about the field, or about a part of it. */
    boolean holds(String field) {
        return fields.stream()
                .anyMatch(own -> field.equals(own) || field.startsWith(own + ".") || field.startsWith(own + "["));
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public Message title() {
        return Message.of("desk.room." + word());
    }

    /** Its address, below that of its lesson. */
    public String way() {
        return "/" + word();
    }

    Optional<Room> before() {
        return neighbour(-1);
    }

    Optional<Room> after() {
        return neighbour(1);
    }

    private Optional<Room> neighbour(int by) {
        int place = ordinal() + by;
        return place < 0 || place >= values().length ? Optional.empty() : Optional.of(values()[place]);
    }
}
