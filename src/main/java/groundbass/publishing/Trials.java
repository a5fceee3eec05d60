package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Revision;
import groundbass.form.Outcome;
import groundbass.release.ReleaseId;
import java.time.Duration;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;

/**
 * Builds what a draft comes to, so that its educator sees it as students will, without promising anything. When the same
 * is published afterwards, its files are there already.
 */
public final class Trials {
    /** So long what was built is kept for another look; afterwards it is built again where it is asked for. */
    static final Duration KEPT = Duration.ofDays(7);

    private final PublishingParts parts;

    Trials(PublishingParts parts) {
        this.parts = parts;
    }

    /** Fixes the draft as a revision and has its files built; where that was done already, it is found again. */
    public Outcome<ReleaseId> build(EducatorId who, EpisodeId id) {
        var revision = parts.desk.makeRevision(who, id, "");
        return revision.result()
                .map(made -> Outcome.done(build(made)))
                .orElseGet(() -> Outcome.refused(revision.problems()));
    }

    /** Deletes those that are old, but for what a link to a colleague still opens. */
    public void forget(Predicate<ReleaseId> linked) {
        parts.releases.trials().forget(parts.clock.instant().minus(KEPT), linked);
    }

    private ReleaseId build(Revision revision) {
        var id = parts.jdbi.inTransaction(handle -> enter(handle, revision));
        parts.queue.add(id);
        return id;
    }

    private ReleaseId enter(Handle handle, Revision revision) {
        // locked, since two previews at once would take one number
        var episode = parts.episodes.lock(handle, revision.episode()).orElseThrow();
        var spec = parts.specs.of(handle, episode, revision);
        return parts.releases
                .latest(episode.id())
                .filter(made -> made.spec().makesTheSameAs(spec) && !made.isFailed())
                .or(() -> parts.releases.trials().find(handle, episode.id(), spec))
                .map(found -> found.id())
                .orElseGet(() -> parts.releases.trials().create(handle, episode.id(), spec, parts.clock.instant()));
    }
}
