package groundbass.release;

import groundbass.catalog.EpisodeId;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * One release of an episode, without its files.
 *
 * @param publishedAt when readers first got it; empty while it is only prepared
 */
public record Release(
        ReleaseId id,
        EpisodeId episode,
        Recipe recipe,
        BuildState state,
        Instant createdAt,
        Optional<Instant> publishedAt) {
    public Release {
        Objects.requireNonNull(id);
        Objects.requireNonNull(episode);
        Objects.requireNonNull(recipe);
        Objects.requireNonNull(state);
        Objects.requireNonNull(createdAt);
        Objects.requireNonNull(publishedAt);
    }

    public boolean isReady() {
        return state instanceof BuildState.Ready;
    }

    public boolean isFailed() {
        return state instanceof BuildState.Failed;
    }
}
