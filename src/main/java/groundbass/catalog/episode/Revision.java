package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import java.time.Instant;
import java.util.Objects;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/**
 * One immutable document of everything an episode says.
 *
 * @param number counts the revisions of one episode, from 1
 * @param note   why it was made; may be empty
 */
public record Revision(
        RevisionId id,
        EpisodeId episode,
        int number,
        EpisodeDocument document,
        String note,
        @ColumnName("educator_id") EducatorId by,
        Instant createdAt) {
    public Revision {
        Objects.requireNonNull(id);
        Objects.requireNonNull(episode);
        if (number < 1) {
            throw new IllegalArgumentException("revision number below 1: " + number);
        }
        Objects.requireNonNull(document);
        Objects.requireNonNull(note);
        Objects.requireNonNull(by);
        Objects.requireNonNull(createdAt);
    }
}
