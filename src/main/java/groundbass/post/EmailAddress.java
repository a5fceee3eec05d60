package groundbass.post;

import groundbass.identity.TextValue;
import java.net.IDN;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * An address that can be put into a mail header as it stands: the dot-string form of RFC 5321 section 4.1.2, ASCII
 * only, in lower case (one reader is one address, however it was typed), at most 254 characters (RFC 5321 section
 * 4.5.3.1.3 allows a path of 256 with its angle brackets).
 */
public record EmailAddress(String value) implements TextValue {
    private static final int LONGEST = 254;
    private static final int LONGEST_LOCAL_PART = 64;
    private static final String ATOM = "[a-z0-9!#$%&'*+/=?^_`{|}~-]+";
    private static final String LABEL = "[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?";
    private static final Pattern FORM = Pattern.compile(ATOM + "(\\." + ATOM + ")*@(" + LABEL + "\\.)*" + LABEL);

    public EmailAddress {
        if (!isWellFormed(value)) throw new IllegalArgumentException("not an e-mail address");
    }

    /** Reads what a person typed; a domain in other letters becomes its ASCII form (IDNA). */
    public static Optional<EmailAddress> read(String typed) {
        String trimmed = typed.strip();
        int at = trimmed.lastIndexOf('@');
        if (at < 0 || trimmed.length() > LONGEST) return Optional.empty();
        return asciiDomain(trimmed.substring(at + 1))
                .map(domain -> (trimmed.substring(0, at) + "@" + domain).toLowerCase(Locale.ROOT))
                .filter(EmailAddress::isWellFormed)
                .map(EmailAddress::new);
    }

    /** What stands behind the sign. */
    public String domain() {
        return value.substring(value.indexOf('@') + 1);
    }

    private static Optional<String> asciiDomain(String domain) {
        try {
            return Optional.of(IDN.toASCII(domain));
        } catch (IllegalArgumentException notADomain) {
            return Optional.empty();
        }
    }

    private static boolean isWellFormed(String text) {
        return text.length() <= LONGEST
                && text.indexOf('@') <= LONGEST_LOCAL_PART
                && FORM.matcher(text).matches();
    }

    @Override
    public String toString() {
        return value;
    }
}
