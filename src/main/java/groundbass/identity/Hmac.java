package groundbass.identity;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA256 (RFC 2104 with FIPS 180-4). */
public final class Hmac {
    private static final String ALGORITHM = "HmacSHA256";

    private Hmac() {}

    /** Thirty-two bytes that only a holder of the key can make. */
    public static byte[] of(byte[] key, String text) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(key, ALGORITHM));
            return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has " + ALGORITHM, e);
        }
    }
}
