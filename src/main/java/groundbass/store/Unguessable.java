package groundbass.store;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Texts that nobody can guess: 256 random bits as 43 characters that are safe in addresses, cookies and headers. */
public final class Unguessable {
    /** What such a text looks like, as a regular expression. */
    public static final String FORM = "[A-Za-z0-9_-]{43}";

    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private static final int GROUPS = 7;
    private static final int LETTERS_EACH = 4;

    private Unguessable() {}

    /**
     * One for people to type: 140 random bits as seven groups of four letters and digits. Whoever reads it looks neither
     * at spaces nor at capitals.
     */
    public static String toType() {
        return Stream.generate(() -> RandomId.letters(LETTERS_EACH))
                .limit(GROUPS)
                .collect(Collectors.joining(" "));
    }

    public static String next() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
