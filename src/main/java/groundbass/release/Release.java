package groundbass.release;

import groundbass.catalog.episode.EpisodeId;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
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
        BuildSpec spec,
        BuildState state,
        Instant createdAt,
        Optional<Instant> publishedAt,
        ReleaseNote note) {
    public Release {
        Objects.requireNonNull(id);
        Objects.requireNonNull(episode);
        Objects.requireNonNull(spec);
        Objects.requireNonNull(state);
        Objects.requireNonNull(createdAt);
        Objects.requireNonNull(publishedAt);
        Objects.requireNonNull(note);
    }

    /**
     * What readers get of these, as {@link Releases#CURRENT} says it of rows.
     *
     * @param all of one episode, in any order
     */
    public static Optional<Release> current(Collection<Release> all) {
        return all.stream()
                .filter(release -> release.publishedAt().isPresent())
                .max(Comparator.comparingInt(release -> release.spec().release()));
    }

    public boolean isReady() {
        return state instanceof BuildState.Ready;
    }

    /** Whether practice tracks are made of it when somebody asks for one. */
    public boolean makesTracks() {
        return isReady() && spec.has(Feature.TRACKS_ON_REQUEST);
    }

    /** Whether it waits to be built, or is being built. */
    public boolean isUnderWay() {
        return state instanceof BuildState.Waiting || state instanceof BuildState.Building;
    }

    public boolean isFailed() {
        return state instanceof BuildState.Failed;
    }

    /** Whether readers have it already, while its sound is still being made. */
    public boolean isSoundToFollow() {
        return publishedAt.isPresent() && !isReady();
    }

    /** Whether a later release took its place before it was built. */
    public boolean isOvertaken() {
        return state instanceof BuildState.Overtaken;
    }
}
