package groundbass.document;

import java.util.Objects;

/**
 * What the sheet says about whose music it is.
 *
 * @param composer  who wrote the music
 * @param credit    who transcribed it, who else is thanked
 * @param statement the rights line: own work, public domain, by permission of ...
 * @param clearance whether it may be published; kept on the desk
 */
public record Rights(String composer, String credit, String statement, Clearance clearance) {
    public static final Rights EMPTY = new Rights("", "", "");

    public Rights {
        Objects.requireNonNull(composer);
        Objects.requireNonNull(credit);
        Objects.requireNonNull(statement);
        Objects.requireNonNull(clearance);
    }

    /** Credits of which nothing was said whether they are cleared. */
    public Rights(String composer, String credit, String statement) {
        this(composer, credit, statement, Clearance.OPEN);
    }
}
