package groundbass.audience.student;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.store.NamedValues;
import java.security.SecureRandom;
import java.util.HexFormat;
import org.jdbi.v3.core.Jdbi;

/** Keys of a site for what it signs: each a named value, made when first needed, shared by all nodes. */
public final class SiteKey {
    private static final int BYTES = 32;
    private static final String PREFIX = "secret.";

    private SiteKey() {}

    static byte[] of(Jdbi jdbi, String name) {
        if (!name.startsWith(PREFIX)) {
            throw new IllegalArgumentException("the name of a key begins with " + PREFIX + ": " + name);
        }
        return HexFormat.of().parseHex(NamedValues.keep(jdbi, name, SiteKey::fresh));
    }

    /**
     * Deletes all of them; what they have signed is good for nothing as soon as every node has started anew, and makes
     * others.
     *
     * @return how many there were
     */
    public static int renew(Jdbi jdbi, Audit audit) {
        return jdbi.inTransaction(handle -> {
            int keys = NamedValues.forget(handle, PREFIX);
            audit.append(handle, Audit.OPERATOR, AuditWord.KEYS_RENEWED, "");
            return keys;
        });
    }

    private static String fresh() {
        byte[] fresh = new byte[BYTES];
        new SecureRandom().nextBytes(fresh);
        return HexFormat.of().formatHex(fresh);
    }
}
