package groundbass.identity;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A SHA-256 digest (FIPS 180-4) as 64 lower-case hexadecimal digits. Files are kept under this type alone, so no text
 * that came from outside can become a path.
 */
public record Sha256(String hex) {
    private static final Pattern FORM = Pattern.compile("[0-9a-f]{64}");

    public Sha256 {
        Objects.requireNonNull(hex);
        if (!FORM.matcher(hex).matches()) {
            throw new IllegalArgumentException("not 64 lower-case hexadecimal digits");
        }
    }

    /** Reads text from outside; empty where it is not a digest. */
    public static Optional<Sha256> parse(String text) {
        return FORM.matcher(text).matches() ? Optional.of(new Sha256(text)) : Optional.empty();
    }

    /** The digest of some bytes. */
    public static Sha256 of(byte[] content) {
        return finish(digest(), content);
    }

    public static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    public static Sha256 finish(MessageDigest digest, byte... rest) {
        return new Sha256(HexFormat.of().formatHex(digest.digest(rest)));
    }

    @Override
    public String toString() {
        return hex;
    }
}
