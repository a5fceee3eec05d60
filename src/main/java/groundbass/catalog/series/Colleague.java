package groundbass.catalog.series;

import groundbass.catalog.educator.EducatorId;
import java.time.Instant;
import java.util.Objects;

/**
 * Somebody who works on a series beside its owner.
 *
 * @param part one of {@link SeriesPart#SHARED}
 */
public record Colleague(EducatorId id, String name, String email, SeriesPart part, Instant since) {
    public Colleague {
        Objects.requireNonNull(id);
        Objects.requireNonNull(name);
        Objects.requireNonNull(email);
        Objects.requireNonNull(since);
        if (!SeriesPart.SHARED.contains(part)) {
            throw new IllegalArgumentException("the owner is no colleague of themselves");
        }
    }
}
