package groundbass.catalog.educator;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A token that an educator has given to a program of theirs, without its secret.
 *
 * @param name what the educator calls the program
 * @param scopes what it may do; at least one
 * @param usedAt when it was last used, to the minute; empty where it never was
 */
public record ProgramToken(
        String id,
        EducatorId educator,
        String name,
        Set<ProgramScope> scopes,
        Instant createdAt,
        Optional<Instant> usedAt,
        Instant expiresAt) {
    public ProgramToken {
        Objects.requireNonNull(id);
        Objects.requireNonNull(educator);
        Objects.requireNonNull(name);
        scopes = Set.copyOf(scopes);
        Objects.requireNonNull(createdAt);
        Objects.requireNonNull(usedAt);
        Objects.requireNonNull(expiresAt);
    }

    public boolean may(ProgramScope scope) {
        return scopes.contains(scope);
    }

    /** Whether it opens nothing any more. */
    public boolean isOver(Instant now) {
        return !expiresAt.isAfter(now);
    }
}
