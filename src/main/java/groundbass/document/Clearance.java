package groundbass.document;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How far the question is settled whether the music may be published. General words, no legal advice. */
public enum Clearance {
    /** Nothing was said of it yet. Nothing goes out. */
    OPEN,
    /** Music of one's own. */
    OWN,
    /** Free of rights where it is published, as far as one could find out. */
    FREE,
    /** Asked for and not yet given. Nothing goes out. */
    WAITING,
    /** Given by whoever holds the rights. */
    GIVEN;

    /** Whether it may be published as far as the educator knows. */
    public boolean isSettled() {
        return this != OPEN && this != WAITING;
    }

    /** How it is sent in a form. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String messageKey() {
        return "catalog.clearance." + word();
    }

    public static Optional<Clearance> parse(String word) {
        return Arrays.stream(values())
                .filter(state -> state.word().equals(word))
                .findFirst();
    }
}
