package groundbass.audience.student;

import groundbass.identity.Hmac;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Signs ids that are given out, so that what comes back is known to be ours: {@code id.signature}, the signature being
 * HMAC-SHA256 in base64url.
 */
public final class SignedId {
    private final byte[] key;

    public SignedId(byte[] key) {
        this.key = key.clone();
    }

    /** With the key of this site that has this name, made on the first call and shared by all nodes. */
    public static SignedId of(Jdbi jdbi, String name) {
        return new SignedId(SiteKey.of(jdbi, name));
    }

    public String sign(String id) {
        return id + "." + signature(id);
    }

    /** The id, if this key signed it; anything else that somebody may send is nothing. */
    public Optional<String> verify(String token) {
        int dot = token.indexOf('.');
        if (dot < 0) return Optional.empty();
        String expected = signature(token.substring(0, dot));
        boolean genuine = MessageDigest.isEqual(bytes(expected), bytes(token.substring(dot + 1)));
        return genuine ? Optional.of(token.substring(0, dot)) : Optional.empty();
    }

    private String signature(String id) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(Hmac.of(key, id));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
