package groundbass.catalog.educator;

import java.time.Instant;
import java.util.Objects;

/**
 * A person who writes lessons.
 *
 * @param email what they sign in with, in lower case
 */
public record Educator(EducatorId id, String name, String email, Instant createdAt) {
    public Educator {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        Objects.requireNonNull(email);
        Objects.requireNonNull(createdAt);
    }
}
