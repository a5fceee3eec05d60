package groundbass.store;

import java.security.SecureRandom;
import java.util.Base64;

/** Texts that nobody can guess: 256 random bits as 43 characters that are safe in addresses, cookies and headers. */
public final class Unguessable {
    /** What such a text looks like, as a regular expression. */
    public static final String FORM = "[A-Za-z0-9_-]{43}";

    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Unguessable() {}

    public static String next() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
