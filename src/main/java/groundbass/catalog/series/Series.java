package groundbass.catalog.series;

import groundbass.catalog.educator.EducatorId;
import groundbass.identity.Slug;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;

/**
 * Episodes that belong together, owned by one educator.
 *
 * @param zone the zone in which its hours are promised
 */
public record Series(
        SeriesId id, EducatorId owner, Slug slug, String title, String summary, ZoneId zone, Instant createdAt) {
    public Series {
        Objects.requireNonNull(id);
        Objects.requireNonNull(owner);
        Objects.requireNonNull(slug);
        Objects.requireNonNull(title);
        Objects.requireNonNull(summary);
        Objects.requireNonNull(zone);
        Objects.requireNonNull(createdAt);
    }
}
