package groundbass.catalog.educator;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import groundbass.catalog.educator.Educators.StoredPassword;
import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jdbi.v3.core.Jdbi;

/**
 * Educators as the site's operator makes them, but for the figures of their passwords' digests, which cost a processor
 * next to nothing: most tests have an educator, and few are about how hard a password is to guess. {@code EducatorsTest}
 * holds the figures that count.
 */
public final class TrialEducators {
    private static final Argon2Function LIGHT = Argon2Function.getInstance(64, 1, 1, 32, Argon2.ID);
    private static final Map<String, StoredPassword> STORED = new ConcurrentHashMap<>();

    private TrialEducators() {}

    /** Who comes first keeps the site. */
    public static Educator create(Jdbi jdbi, Clock clock, String name, String email, String password) {
        var rows = new EducatorRepository(jdbi);
        return jdbi.inTransaction(handle -> {
            var educator = new Educators(jdbi, new Audit(jdbi, clock), clock)
                    .openDesk(handle, name, email, stored(password), true)
                    .orElseThrow();
            if (rows.owner().isEmpty()) {
                rows.setOwner(handle, educator.id());
            }
            return educator;
        });
    }

    /** A password as it is stored, which the sign-in takes as any other. */
    public static StoredPassword stored(String password) {
        return STORED.computeIfAbsent(
                password,
                any -> new StoredPassword(
                        Password.hash(password).addRandomSalt(16).with(LIGHT).getResult()));
    }
}
