package groundbass.audience.student;

import groundbass.identity.Hmac;
import groundbass.store.RandomId;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Marks a browser in which an educator has signed in with their password, so that it is counted apart from strangers who
 * try that account: {@code id.signature}, where HMAC-SHA256 covers the id and the account's mail address. It opens
 * nothing by itself.
 */
public final class BrowserMark {
    private static final String SETTING = "secret.browser-mark";

    private final byte[] key;

    BrowserMark(byte[] key) {
        this.key = key.clone();
    }

    /** With the key of this site, made on the first call. */
    public static BrowserMark of(Jdbi jdbi) {
        return new BrowserMark(SiteKey.of(jdbi, SETTING));
    }

    /** A new mark for the account with that address. */
    public String next(String email) {
        String id = RandomId.next();
        return id + "." + signature(id, email);
    }

    /** The id of a browser that bears a mark for this account; anything else a client may send is nothing. */
    public Optional<String> read(String mark, String email) {
        int dot = mark.indexOf('.');
        if (dot < 0) return Optional.empty();
        String id = mark.substring(0, dot);
        boolean genuine = MessageDigest.isEqual(bytes(signature(id, email)), bytes(mark.substring(dot + 1)));
        return genuine ? Optional.of(id) : Optional.empty();
    }

    private String signature(String id, String email) {
        String signed = id + "\n" + email.strip().toLowerCase(Locale.ROOT);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(Hmac.of(key, signed));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
