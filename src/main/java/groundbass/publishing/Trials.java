package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revision;
import groundbass.form.Outcome;
import groundbass.release.BuildQueue;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import java.time.Duration;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Builds what a draft comes to, so that its educator sees it as students will, without promising anything. When the same
 * is published afterwards, its files are there already.
 */
public final class Trials {
    /** So long what was built is kept for another look; afterwards it is built again where it is asked for. */
    static final Duration KEPT = Duration.ofDays(7);

    private final Jdbi jdbi;
    private final Clock clock;
    private final EpisodeService desk;
    private final Episodes episodes;
    private final Releases releases;
    private final BuildSpecs specs;
    private final BuildQueue queue;

    Trials(
            Jdbi jdbi,
            Clock clock,
            EpisodeService desk,
            Episodes episodes,
            Releases releases,
            BuildSpecs specs,
            BuildQueue queue) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.desk = desk;
        this.episodes = episodes;
        this.releases = releases;
        this.specs = specs;
        this.queue = queue;
    }

    /** Fixes the draft as a revision and has its files built; where that was done already, it is found again. */
    public Outcome<ReleaseId> build(EducatorId who, EpisodeId id) {
        var revision = desk.makeRevision(who, id, "");
        return revision.result()
                .map(made -> Outcome.done(build(made)))
                .orElseGet(() -> Outcome.refused(revision.problems()));
    }

    /** Deletes those that are old, but for what a link to a colleague still opens. */
    public void forget(Predicate<ReleaseId> linked) {
        releases.forgetTrials(clock.instant().minus(KEPT), linked);
    }

    private ReleaseId build(Revision revision) {
        var id = jdbi.inTransaction(handle -> enter(handle, revision));
        queue.add(id);
        return id;
    }

    private ReleaseId enter(Handle handle, Revision revision) {
        var episode = episodes.find(handle, revision.episode()).orElseThrow();
        var spec = specs.of(handle, episode, revision);
        return releases.latest(handle, episode.id())
                .filter(made -> made.spec().makesTheSameAs(spec) && !made.isFailed())
                .or(() -> releases.trial(handle, episode.id(), spec))
                .map(found -> found.id())
                .orElseGet(() -> releases.createTrial(handle, episode.id(), spec, clock.instant()));
    }
}
