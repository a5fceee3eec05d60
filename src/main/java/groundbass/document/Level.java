package groundbass.document;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** How much a lesson asks of the student. */
public enum Level {
    BEGINNER,
    INTERMEDIATE,
    ADVANCED;

    /** The name in the database, in forms and in documents. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return "catalog.level." + code();
    }

    public static Optional<Level> parse(String code) {
        return Stream.of(values()).filter(level -> level.code().equals(code)).findFirst();
    }
}
