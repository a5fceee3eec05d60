package groundbass.store;

import groundbass.identity.IdForm;
import java.security.SecureRandom;
import java.util.concurrent.ThreadLocalRandom;
import java.util.random.RandomGenerator;

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
        return letters(count, RANDOM);
    }

    /** As long as an id, told apart from others and no more: for what need not be kept from anybody. */
    static String guessable() {
        return letters(IdForm.LENGTH, ThreadLocalRandom.current());
    }

    private static String letters(int count, RandomGenerator random) {
        var text = new StringBuilder(count);
        for (int i = 0; i < count; i++) {
            text.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        return text.toString();
    }
}
