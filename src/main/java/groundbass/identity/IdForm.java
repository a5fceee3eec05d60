package groundbass.identity;

import java.util.regex.Pattern;

/** The form of an id: 16 small letters and digits, safe in addresses and file names. */
public final class IdForm {
    public static final int LENGTH = 16;

    private static final Pattern FORM = Pattern.compile("[a-z0-9]{" + LENGTH + "}");

    private IdForm() {}

    /** Whether text from outside has the form of an id. */
    public static boolean isId(String text) {
        return FORM.matcher(text).matches();
    }

    /**
     * Checks the value of an id record.
     *
     * @throws IllegalArgumentException where it is no id
     */
    public static String require(String value) {
        if (!isId(value)) {
            throw new IllegalArgumentException("not an id of " + LENGTH + " small letters and digits");
        }
        return value;
    }
}
