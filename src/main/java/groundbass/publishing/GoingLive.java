package groundbass.publishing;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.release.BuildQueue;
import groundbass.release.BuildState;
import groundbass.release.Release;
import groundbass.release.Releases;
import java.time.Clock;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The pass that brings out what is due. It may run as often as anyone likes, on as many threads: each episode goes live
 * once, also after a night switched off, and one that cannot go out does not hold up the others.
 */
public final class GoingLive {
    private static final Logger log = LoggerFactory.getLogger(GoingLive.class);
    private static final String NOBODY = "calendar";

    private final Jdbi jdbi;
    private final Clock clock;
    private final Audit audit;
    private final Episodes episodes;
    private final Revisions revisions;
    private final Releases releases;
    private final Publisher publisher;
    private final BuildQueue queue;
    private final Runnable afterwards;

    /** @param afterwards what makes it last: told after each episode that went out */
    public GoingLive(
            Jdbi jdbi,
            Clock clock,
            Audit audit,
            Releases releases,
            Publisher publisher,
            BuildQueue queue,
            Runnable afterwards) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.audit = audit;
        this.episodes = new Episodes(jdbi);
        this.revisions = new Revisions(jdbi, clock);
        this.releases = releases;
        this.publisher = publisher;
        this.queue = queue;
        this.afterwards = afterwards;
    }

    /** One pass: everything whose hour has come and whose files are ready. */
    public void pass() {
        releases.tryAgain(clock.instant());
        releases.unfinished().forEach(release -> queue.add(release.id()));
        each(episodes.dueBefore(clock.instant()), this::bringOut);
        each(releases.readyCorrections(), this::correct);
    }

    private <T> void each(Iterable<T> all, Consumer<T> task) {
        for (T one : all) {
            try {
                task.accept(one);
            } catch (RuntimeException e) {
                log.error("{} could not go out", one, e);
            }
        }
    }

    private void bringOut(Episode episode) {
        releases.latest(episode.id())
                .filter(release -> release.state() instanceof BuildState.Ready)
                .ifPresent(release -> bringOut(episode, release));
    }

    private void bringOut(Episode episode, Release release) {
        boolean out = jdbi.inTransaction(handle -> {
            if (publisher.isStale(handle, episode, release)) {
                publisher.renew(handle, episode, release);
                return false;
            }
            describe(handle, release); // while it is unpublished, so that the slug follows the title
            return episodes.markPublished(handle, episode.id(), clock.instant()) && publishFirst(handle, release);
        });
        if (out) {
            log.info("episode {} is out", episode.id());
            afterwards.run();
        }
    }

    private void describe(Handle handle, Release release) {
        revisions
                .find(handle, release.recipe().revision())
                .ifPresent(revision -> episodes.describe(handle, release.episode(), revision.document()));
    }

    /** An episode must never be live without a release, so the transaction fails where this one cannot be had. */
    private boolean publishFirst(Handle handle, Release release) {
        if (!publish(handle, release)) {
            throw new IllegalStateException("release " + release.id() + " cannot be published");
        }
        return true;
    }

    private void correct(Release release) {
        boolean out = jdbi.inTransaction(handle -> {
            describe(handle, release);
            return publish(handle, release);
        });
        if (out) {
            log.info(
                    "episode {} is corrected by release {}",
                    release.episode(),
                    release.recipe().release());
            afterwards.run();
        }
    }

    private boolean publish(Handle handle, Release release) {
        if (!releases.publish(handle, release.id(), clock.instant())) {
            return false;
        }
        audit.append(handle, NOBODY, "release.published", release.id().value());
        return true;
    }
}
