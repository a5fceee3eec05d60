package groundbass.store;

import java.security.SecureRandom;

/** Ids that cannot be guessed or counted: 16 letters and digits, 80 random bits, safe in addresses and file names. */
public final class RandomId {
    private static final String ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789";
    private static final int LENGTH = 16;
    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomId() {}

    public static String next() {
        var id = new StringBuilder(LENGTH);
        for (int i = 0; i < LENGTH; i++) {
            id.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return id.toString();
    }
}
