package groundbass.audience.student;

import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/** Keys of a site for what it signs: each a setting, made when first needed, shared by all nodes. */
public final class SiteKey {
    private static final int BYTES = 32;

    private SiteKey() {}

    public static byte[] of(Jdbi jdbi, String setting) {
        Optional<String> kept = jdbi.withHandle(handle -> kept(handle, setting));
        return HexFormat.of().parseHex(kept.orElseGet(() -> make(jdbi, setting)));
    }

    private static Optional<String> kept(Handle handle, String setting) {
        return handle.createQuery("select chosen from setting where name = :name")
                .bind("name", setting)
                .mapTo(String.class)
                .findOne();
    }

    private static String make(Jdbi jdbi, String setting) {
        byte[] fresh = new byte[BYTES];
        new SecureRandom().nextBytes(fresh);
        try {
            jdbi.useHandle(handle -> handle.execute(
                    "insert into setting (name, chosen) values (?, ?)",
                    setting,
                    HexFormat.of().formatHex(fresh)));
        } catch (UnableToExecuteStatementException anotherNodeWasFaster) {
            return jdbi.withHandle(handle -> kept(handle, setting)).orElseThrow(() -> anotherNodeWasFaster);
        }
        return HexFormat.of().formatHex(fresh);
    }
}
