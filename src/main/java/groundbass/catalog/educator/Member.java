package groundbass.catalog.educator;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.jdbi.v3.core.mapper.Nested;

/**
 * Somebody with a desk, as the site's owner sees them.
 *
 * @param hasFactor  whether they have a second factor
 * @param lastSignIn empty where that was longer ago than {@link Audit#SIGN_INS_KEPT}
 */
public record Member(
        @Nested Educator educator, SiteStanding standing, boolean hasFactor, Optional<Instant> lastSignIn) {
    public Member {
        Objects.requireNonNull(educator);
        Objects.requireNonNull(standing);
        Objects.requireNonNull(lastSignIn);
    }
}
