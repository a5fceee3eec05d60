package groundbass.store;

import groundbass.identity.IdForm;
import java.security.SecureRandom;

/** Ids that cannot be guessed or counted: 80 random bits in the form of an {@link IdForm}. */
public final class RandomId {
    private static final String ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789";
    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomId() {}

    public static String next() {
        var id = new StringBuilder(IdForm.LENGTH);
        for (int i = 0; i < IdForm.LENGTH; i++) {
            id.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return id.toString();
    }
}
