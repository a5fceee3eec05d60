package groundbass.audience.student;

import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Base64;

/**
 * A secret that a browser carries: 256 random bits as 43 characters safe in addresses and cookies. Rows hold its hash
 * alone; a plain SHA-256 is enough, since nobody can guess what it was made from. Not shown by {@code toString}.
 */
public record SecretToken(String value) {
    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    public static SecretToken next() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return new SecretToken(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** SHA-256 of the characters, as 64 hexadecimal digits. */
    public String hash() {
        return Sha256.of(value.getBytes(StandardCharsets.UTF_8)).hex();
    }

    @Override
    public String toString() {
        return "SecretToken[hidden]";
    }
}
