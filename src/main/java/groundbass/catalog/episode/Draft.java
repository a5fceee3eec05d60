package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * What is being typed for one episode, whoever types.
 *
 * @param educator who saved it last; who asks, where it never was saved
 * @param version counts the times it was saved; 0 where it never was
 * @param savedAt when it was last saved
 */
public record Draft(
        EducatorId educator, EpisodeId episode, int version, EpisodeDocument document, Optional<Instant> savedAt) {
    public Draft {
        Objects.requireNonNull(educator);
        Objects.requireNonNull(episode);
        Objects.requireNonNull(document);
        Objects.requireNonNull(savedAt);
    }
}
