package groundbass.audience.student;

import java.time.Instant;
import java.util.regex.Pattern;

/**
 * A place where somebody is signed in, as they see it in the list of theirs.
 *
 * @param number the first 16 digits of the token's hash: it names the session in a form and opens nothing
 * @param here   whether the browser that asks is the one
 */
public record OpenSession(String number, Device device, Instant createdAt, Instant seenAt, boolean here) {
    static final int DIGITS = 16;

    private static final Pattern NUMBER = Pattern.compile("[0-9a-f]{" + DIGITS + "}");

    static boolean isNumber(String text) {
        return NUMBER.matcher(text).matches();
    }
}
