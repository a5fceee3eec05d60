package groundbass.catalog.educator;

import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.codec.binary.Base32;

/**
 * What an app that makes codes shares with the site: 160 random bits, as long as the digest (RFC 4226 section 4, R6), in
 * Base32 (RFC 4648). Not shown by {@code toString}.
 */
public record FactorSecret(String base32) {
    private static final int BYTES = 20;
    private static final Pattern FORM = Pattern.compile("[A-Z2-7]{32}");
    private static final SecureRandom RANDOM = new SecureRandom();

    public FactorSecret {
        if (!FORM.matcher(base32).matches()) {
            throw new IllegalArgumentException("not 160 bits in Base32");
        }
    }

    public static FactorSecret next() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return new FactorSecret(new Base32().encodeToString(bytes));
    }

    /** Reads what came from outside. */
    public static Optional<FactorSecret> parse(String text) {
        return FORM.matcher(text).matches() ? Optional.of(new FactorSecret(text)) : Optional.empty();
    }

    byte[] bytes() {
        return new Base32().decode(base32);
    }

    /** In groups of four, to be typed. */
    public String spaced() {
        return base32.replaceAll("(.{4})(?!$)", "$1 ");
    }

    /** The address that apps read from a square code; common practice, no source. */
    public URI address(String site, String account) {
        return URI.create("otpauth://totp/" + encoded(site) + ":" + encoded(account) + "?secret=" + base32 + "&issuer="
                + encoded(site));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    @Override
    public String toString() {
        return "FactorSecret[hidden]";
    }
}
