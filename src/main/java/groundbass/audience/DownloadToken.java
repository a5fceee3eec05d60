package groundbass.audience;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/**
 * Signs the id of a download, so that the ranges that a client asks for one after another are known to belong together:
 * {@code id.signature}, the signature being HMAC-SHA256 in base64url. The key is a setting, shared by all nodes.
 */
public final class DownloadToken {
    private static final String SETTING = "secret.download-token";
    private static final int KEY_BYTES = 32;

    private final byte[] key;

    DownloadToken(byte[] key) {
        this.key = key.clone();
    }

    /** With the key of this site, made on the first call. */
    public static DownloadToken of(Jdbi jdbi) {
        Optional<String> kept = jdbi.withHandle(DownloadToken::kept);
        return new DownloadToken(HexFormat.of().parseHex(kept.orElseGet(() -> make(jdbi))));
    }

    String sign(DownloadId id) {
        return id.value() + "." + signature(id.value());
    }

    /** The id, if this key signed it; anything else a client may send is nothing. */
    Optional<DownloadId> verify(String token) {
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

    private static Optional<String> kept(Handle handle) {
        return handle.createQuery("select chosen from setting where name = :name")
                .bind("name", SETTING)
                .mapTo(String.class)
                .findOne();
    }

    private static String make(Jdbi jdbi) {
        byte[] fresh = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(fresh);
        try {
            jdbi.useHandle(handle -> handle.execute(
                    "insert into setting (name, chosen) values (?, ?)",
                    SETTING,
                    HexFormat.of().formatHex(fresh)));
        } catch (UnableToExecuteStatementException anotherNodeWasFaster) {
            return jdbi.withHandle(DownloadToken::kept).orElseThrow(() -> anotherNodeWasFaster);
        }
        return HexFormat.of().formatHex(fresh);
    }
}
