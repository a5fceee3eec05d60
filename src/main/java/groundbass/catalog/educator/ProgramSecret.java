package groundbass.catalog.educator;

import groundbass.identity.Sha256;
import groundbass.store.Unguessable;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a program proves itself by: a prefix that tells whoever finds it what it is, and 256 random bits as 43 characters
 * that a Bearer token may have (RFC 6750 section 2.1). Rows hold its hash alone; a plain SHA-256 is enough, since nobody
 * can guess what it was made from. Not shown by {@code toString}.
 */
public record ProgramSecret(String value) {
    private static final String PREFIX = "groundbass_";
    private static final Pattern FORM = Pattern.compile(PREFIX + Unguessable.FORM);

    public ProgramSecret {
        if (!FORM.matcher(value).matches()) {
            throw new IllegalArgumentException("not a token of a program");
        }
    }

    static ProgramSecret next() {
        return new ProgramSecret(PREFIX + Unguessable.next());
    }

    /** Reads text from outside; empty where it has not the form of a token. */
    public static Optional<ProgramSecret> parse(String text) {
        return FORM.matcher(text).matches() ? Optional.of(new ProgramSecret(text)) : Optional.empty();
    }

    Sha256 hash() {
        return Sha256.of(value.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String toString() {
        return "ProgramSecret[hidden]";
    }
}
