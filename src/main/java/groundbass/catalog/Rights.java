package groundbass.catalog;

import java.util.Objects;

/**
 * What the sheet says about whose music it is.
 *
 * @param composer  who wrote the music
 * @param credit    who transcribed it, who else is thanked
 * @param statement the rights line: own work, public domain, by permission of ...
 */
public record Rights(String composer, String credit, String statement) {
    public static final Rights EMPTY = new Rights("", "", "");

    public Rights {
        Objects.requireNonNull(composer);
        Objects.requireNonNull(credit);
        Objects.requireNonNull(statement);
    }
}
