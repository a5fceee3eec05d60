package groundbass.catalog.upload;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.PictureId;
import groundbass.store.Blob;
import java.time.Instant;
import java.util.Objects;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/**
 * A picture that an educator sent for the notes of an episode.
 *
 * @param originalName what the file was called there; for showing only
 * @param words that stand for it where it is not seen, as they were typed when it was sent
 * @param wide, high in pixels
 * @param blob where the store keeps it
 */
public record Picture(
        PictureId id,
        @ColumnName("educator_id") EducatorId by,
        EpisodeId episode,
        String originalName,
        String words,
        PictureFormat format,
        int wide,
        int high,
        @Nested Blob blob,
        Instant createdAt) {
    public Picture {
        Objects.requireNonNull(id);
        Objects.requireNonNull(by);
        Objects.requireNonNull(episode);
        Objects.requireNonNull(originalName);
        Objects.requireNonNull(words);
        Objects.requireNonNull(format);
        Objects.requireNonNull(blob);
        Objects.requireNonNull(createdAt);
    }
}
