package groundbass.release;

import groundbass.catalog.episode.EpisodeId;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The rows of releases that are made only to be looked at: such a one has a number below zero until it is published after
 * all.
 */
public final class TrialReleases {
    private final Jdbi jdbi;

    TrialReleases(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Enters a release that is built to be looked at, and never goes out by itself. */
    public ReleaseId create(Handle handle, EpisodeId episode, BuildSpec spec, Instant now) {
        int lowest = handle.createQuery("select coalesce(min(number), 0) from release where episode_id = :episode")
                .bind("episode", episode)
                .mapTo(Integer.class)
                .one();
        return Releases.insert(handle, episode, spec, Math.min(lowest, 0) - 1, false, now);
    }

    /** The trial of an episode that was made by exactly this build specification, unless it failed. */
    public Optional<Release> find(Handle handle, EpisodeId episode, BuildSpec spec) {
        return handle
                .createQuery(StoredRelease.SELECT + "where episode_id = :episode and number < 0 order by number")
                .bind("episode", episode)
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list()
                .stream()
                .filter(made -> made.spec().equals(spec) && !made.isFailed())
                .findFirst();
    }

    /** Makes a trial a release to be published, as if it had been entered now. */
    public ReleaseId adopt(Handle handle, Release trial, boolean correction, Instant now) {
        handle.createUpdate("""
                        update release set number = :number, correction = :correction, created_at = :now
                        where id = :id and number < 0""")
                .bind("number", trial.spec().release())
                .bind("correction", correction)
                .bind("now", now)
                .bind("id", trial.id())
                .execute();
        Releases.overtakeIdle(handle, trial.episode(), trial.spec().release());
        return trial.id();
    }

    /**
     * Deletes the trials made before this instant, but for those that somebody still wants. Their files go with the sweep,
     * unless another release has the same.
     */
    public void forget(Instant before, Predicate<ReleaseId> wanted) {
        var old = jdbi.withHandle(handle -> handle.createQuery(
                        "select id from release where number < 0 and created_at < :before order by created_at, id")
                .bind("before", before)
                .mapTo(ReleaseId.class)
                .list());
        old.stream().filter(wanted.negate()).forEach(this::forget);
    }

    /** One that was published meanwhile stays. */
    private void forget(ReleaseId id) {
        jdbi.useTransaction(handle -> {
            boolean trial = handle.createQuery("select number from release where id = :id for update")
                    .bind("id", id)
                    .mapTo(Integer.class)
                    .findOne()
                    .filter(number -> number < 0)
                    .isPresent();
            if (trial) {
                handle.execute("delete from release_file where release_id = ?", id.value());
                handle.execute("delete from release where id = ?", id.value());
            }
        });
    }
}
