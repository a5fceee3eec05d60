package groundbass.audience.download;

import groundbass.audience.student.SiteKey;
import groundbass.identity.Hmac;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Signs the id of a download, so that the ranges that a client asks for one after another are known to belong together:
 * {@code id.signature}, the signature being HMAC-SHA256 in base64url. The key is a setting, shared by all nodes.
 */
public final class DownloadToken {
    private static final String SETTING = "secret.download-token";

    private final byte[] key;

    public DownloadToken(byte[] key) {
        this.key = key.clone();
    }

    /** With the key of this site, made on the first call. */
    public static DownloadToken of(Jdbi jdbi) {
        return new DownloadToken(SiteKey.of(jdbi, SETTING));
    }

    public String sign(DownloadId id) {
        return id.value() + "." + signature(id.value());
    }

    /** The id, if this key signed it; anything else a client may send is nothing. */
    public Optional<DownloadId> verify(String token) {
        int dot = token.indexOf('.');
        if (dot < 0) return Optional.empty();
        String expected = signature(token.substring(0, dot));
        boolean genuine = MessageDigest.isEqual(bytes(expected), bytes(token.substring(dot + 1)));
        return genuine ? DownloadId.parse(token.substring(0, dot)) : Optional.empty();
    }

    private String signature(String id) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(Hmac.of(key, id));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
