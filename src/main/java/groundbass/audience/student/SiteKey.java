package groundbass.audience.student;

import groundbass.store.NamedValues;
import java.security.SecureRandom;
import java.util.HexFormat;
import org.jdbi.v3.core.Jdbi;

/** Keys of a site for what it signs: each a named value, made when first needed, shared by all nodes. */
final class SiteKey {
    private static final int BYTES = 32;

    private SiteKey() {}

    static byte[] of(Jdbi jdbi, String name) {
        return HexFormat.of().parseHex(NamedValues.keep(jdbi, name, SiteKey::fresh));
    }

    private static String fresh() {
        byte[] fresh = new byte[BYTES];
        new SecureRandom().nextBytes(fresh);
        return HexFormat.of().formatHex(fresh);
    }
}
