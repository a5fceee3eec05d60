package groundbass.catalog.series;

import java.util.Arrays;
import java.util.Locale;

/** What students see of the lessons of a series that wait for their hour. */
public enum Outlook {
    NOTHING,
    /** When the next lessons come out. */
    HOURS,
    /** And what they are called. */
    TITLES;

    /** The word for it in forms and rows. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads such a word; anything else shows nothing. */
    public static Outlook parse(String word) {
        return Arrays.stream(values())
                .filter(one -> one.word().equals(word))
                .findFirst()
                .orElse(NOTHING);
    }
}
