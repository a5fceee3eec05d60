package groundbass.catalog.upload;

import groundbass.audio.AudioFacts;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.UploadId;
import groundbass.store.Blob;
import java.time.Instant;
import java.util.Objects;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/**
 * A recording that an educator sent for an episode.
 *
 * @param originalName what the file was called there; for showing only
 * @param blob         where the store keeps it
 * @param facts        what it is by its content
 */
public record Upload(
        UploadId id,
        @ColumnName("educator_id") EducatorId by,
        EpisodeId episode,
        String originalName,
        @Nested Blob blob,
        AudioFacts facts,
        Instant createdAt) {
    public Upload {
        Objects.requireNonNull(id);
        Objects.requireNonNull(by);
        Objects.requireNonNull(episode);
        Objects.requireNonNull(originalName);
        Objects.requireNonNull(blob);
        Objects.requireNonNull(facts);
        Objects.requireNonNull(createdAt);
    }

    public String mediaType() {
        return facts.format().mediaType();
    }
}
