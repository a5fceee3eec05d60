package groundbass.document;

import java.util.Objects;

/**
 * What the sheet says about whose music it is.
 *
 * @param composer  who wrote the music
 * @param credit    who transcribed it, who else is thanked
 * @param statement the rights line: own work, public domain, by permission of ...
 * @param clearance whether it may be published; kept on the desk
 * @param licence   by what, where permission was given
 */
public record Rights(String composer, String credit, String statement, Clearance clearance, Licence licence) {
    public static final Rights EMPTY = new Rights("", "", "");

    public Rights {
        Objects.requireNonNull(composer);
        Objects.requireNonNull(credit);
        Objects.requireNonNull(statement);
        Objects.requireNonNull(clearance);
        Objects.requireNonNull(licence);
    }

    /** Credits of music that needs no permission, or of which none is kept. */
    public Rights(String composer, String credit, String statement, Clearance clearance) {
        this(composer, credit, statement, clearance, Licence.NONE);
    }

    /** Credits of which nothing was said whether they are cleared. */
    public Rights(String composer, String credit, String statement) {
        this(composer, credit, statement, Clearance.OPEN);
    }
}
