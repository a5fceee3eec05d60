package groundbass.store;

import groundbass.identity.IdForm;
import java.security.SecureRandom;

/** Ids that cannot be guessed or counted: 80 random bits in the form of an {@link IdForm}. */
public final class RandomId {
    private static final String ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789";
    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomId() {}

    public static String next() {
        return letters(IdForm.LENGTH);
    }

    /** So many letters and digits that are not mistaken for one another, each of five random bits. */
    static String letters(int count) {
        var text = new StringBuilder(count);
        for (int i = 0; i < count; i++) {
            text.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return text.toString();
    }
}
