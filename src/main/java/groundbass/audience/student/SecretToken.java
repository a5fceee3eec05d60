package groundbass.audience.student;

import groundbass.identity.Sha256;
import groundbass.store.Unguessable;
import java.nio.charset.StandardCharsets;

/**
 * A secret that a browser carries: 256 random bits as 43 characters safe in addresses and cookies. Rows hold its hash
 * alone; a plain SHA-256 is enough, since nobody can guess what it was made from. Not shown by {@code toString}.
 */
public record SecretToken(String value) {
    public static SecretToken next() {
        return new SecretToken(Unguessable.next());
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
