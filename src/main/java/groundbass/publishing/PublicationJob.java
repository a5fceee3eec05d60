package groundbass.publishing;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.release.Release;
import groundbass.release.ReleaseNote;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The pass that brings out what is due. It may run as often as anyone likes, on as many threads: each episode goes live
 * once, also after a night switched off, and one that cannot go out does not hold up the others.
 */
public final class PublicationJob {
    private static final Logger log = LoggerFactory.getLogger(PublicationJob.class);

    private final PublishingParts parts;
    private final Promises promises;
    private final HourWatch watch;
    private final Runnable afterwards;

    /** @param afterwards what makes it last: told after each episode that went out */
    public PublicationJob(PublishingParts parts, HourWatch watch, Runnable afterwards) {
        this.parts = parts;
        this.promises = watch.promises();
        this.watch = watch;
        this.afterwards = afterwards;
    }

    /** One pass: everything whose hour has come and whose files are ready; what is to be built waits for it afterwards. */
    public void pass() {
        each(parts.releases.failedCorrections(), watch::lookAtCorrection);
        parts.releases.builds().tryAgain(parts.clock.instant());
        var promised = parts.episodes.scheduled();
        promises.keepOnly(promised);
        each(promised, this::keep);
        each(promised, watch::look); // whatever became of them, their educators hear of it
        each(parts.releases.readyCorrections(), this::correct);
        parts.releases.builds().unfinished().forEach(release -> parts.queue.add(release.id()));
    }

    private <T> void each(Iterable<T> all, Consumer<T> task) {
        for (T one : all) {
            try {
                task.accept(one);
            } catch (RuntimeException | Error e) { // whatever it is, it keeps back this one alone
                log.error("{} could not go out", one, e);
            }
        }
    }

    private void keep(Episode episode) {
        if (episode.state() instanceof EpisodeState.Scheduled promise) {
            promises.stand(episode, promise).ifPresent(stand -> promises.freshen(episode, promise, stand));
            if (promise.isDue(parts.clock.instant())) {
                promises.stand(episode, promise).ifPresent(stand -> bringOut(episode, promise, stand));
            }
        }
    }

    private void bringOut(Episode episode, EpisodeState.Scheduled promise, Promises.Stand stand) {
        if (stand.keptBack().isEmpty()) {
            stand.showable().ifPresent(release -> bringOut(episode, promise, release));
        }
    }

    private void bringOut(Episode episode, EpisodeState.Scheduled promise, Release release) {
        boolean out = parts.jdbi.inTransaction(handle -> {
            var still = parts.episodes.lock(handle, episode.id()).filter(now -> now.state()
                    .equals(promise));
            if (still.isEmpty()) {
                return false;
            }
            describe(handle, release); // while it is unpublished, so that the slug follows the title
            watch.cameOut(handle, episode, promise);
            boolean mine = parts.episodes.markPublished(handle, episode.id(), parts.clock.instant())
                    && publishFirst(handle, release);
            if (mine) {
                announce(handle, episode);
            }
            return mine;
        });
        if (out) {
            log.info("episode {} is out", episode.id());
            afterwards.run();
        }
    }

    private void describe(Handle handle, Release release) {
        parts.revisions
                .find(release.spec().revision())
                .ifPresent(revision -> parts.episodes.describe(handle, release.episode(), revision.document()));
    }

    /** An episode must never be live without a release, so the transaction fails where this one cannot be had. */
    private boolean publishFirst(Handle handle, Release release) {
        if (!publish(handle, release)) {
            throw new IllegalStateException("release " + release.id() + " cannot be published");
        }
        return true;
    }

    /** Whom it is told is settled at this moment, once; the letters are written afterwards. */
    private void announce(Handle handle, Episode episode) {
        int readers = parts.news.announce(handle, episode.series(), episode.id());
        log.info("episode {} is to be told to {} readers", episode.id(), readers);
    }

    private void correct(Release release) {
        boolean out = parts.jdbi.inTransaction(handle -> {
            parts.episodes.lock(handle, release.episode());
            var note = note(release);
            parts.releases.annotate(handle, release.id(), note);
            boolean mine = publish(handle, release);
            if (mine) {
                describe(handle, release); // only now: a later correction that was faster keeps its title
            }
            if (mine && note.byLetter()) {
                tellHolders(handle, release);
            }
            return mine;
        });
        if (out) {
            log.info(
                    "episode {} is corrected by release {}",
                    release.episode(),
                    release.spec().release());
            afterwards.run();
        }
    }

    /** What a later correction has overtaken comes with it, and what was to be told of that as well. */
    private ReleaseNote note(Release release) {
        return release.note()
                .after(parts.releases.passedOver(release).stream()
                        .map(Release::note)
                        .toList());
    }

    private void tellHolders(Handle handle, Release release) {
        parts.episodes
                .find(release.episode())
                .ifPresent(lesson -> parts.news.correct(
                        handle, lesson.series(), lesson.id(), release.id().value()));
    }

    private boolean publish(Handle handle, Release release) {
        if (!parts.releases.publish(handle, release.id(), parts.clock.instant())) {
            return false;
        }
        parts.audit.append(
                handle,
                Audit.CALENDAR,
                AuditWord.RELEASE_PUBLISHED,
                release.id().value());
        return true;
    }
}
