package groundbass.store;

import java.security.SecureRandom;
import java.util.regex.Pattern;

/** Ids that cannot be guessed or counted: 16 letters and digits, 80 random bits, safe in addresses and file names. */
public final class RandomId {
    private static final String ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789";
    private static final int LENGTH = 16;
    private static final SecureRandom RANDOM = new SecureRandom();

    private static final Pattern FORM = Pattern.compile("[a-z0-9]{" + LENGTH + "}");

    private RandomId() {}

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

    public static String next() {
        var id = new StringBuilder(LENGTH);
        for (int i = 0; i < LENGTH; i++) {
            id.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return id.toString();
    }
}
