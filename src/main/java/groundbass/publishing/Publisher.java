package groundbass.publishing;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeDesk;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.settings.Settings;
import groundbass.form.Outcome;
import groundbass.release.BuildQueue;
import groundbass.release.Recipe;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What an educator asks of the calendar. Nothing goes out here: a release to build and an hour to keep are entered,
 * and {@link GoingLive} keeps them.
 */
public final class Publisher {
    private final Jdbi jdbi;
    private final Clock clock;
    private final Audit audit;
    private final EpisodeDesk desk;
    private final Episodes episodes;
    private final Revisions revisions;
    private final Releases releases;
    private final Settings settings;
    private final Recipes recipes;
    private final BuildQueue queue;

    public Publisher(Jdbi jdbi, Clock clock, Audit audit, Releases releases, Addresses addresses, BuildQueue queue) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.audit = audit;
        this.desk = new EpisodeDesk(jdbi, audit, clock);
        this.episodes = new Episodes(jdbi);
        this.revisions = new Revisions(jdbi, clock);
        this.releases = releases;
        this.settings = new Settings(jdbi, audit);
        this.recipes = new Recipes(new SeriesCatalog(jdbi, audit, clock), settings, releases, addresses);
        this.queue = queue;
    }

    /**
     * Fixes the draft as a revision and brings it out as soon as its files are built: an unpublished episode goes live,
     * a published one is corrected.
     */
    public Outcome<ReleaseId> publishNow(EducatorId who, EpisodeId id) {
        return prepare(who, id, Promise.now(clock.getZone(), clock.instant()));
    }

    /** Fixes the draft as a revision, builds its files now and brings them out at the hour promised. */
    public Outcome<ReleaseId> schedule(EducatorId who, EpisodeId id, LocalDateTime local, ZoneId zone) {
        if (episodes.find(id).filter(Episode::isPublished).isPresent()) {
            return Outcome.refused("local", "publishing.problem.published");
        }
        var promise = Promise.of(local, zone, clock.instant());
        return promise.result()
                .map(kept -> prepare(who, id, kept))
                .orElseGet(() -> Outcome.refused(promise.problems()));
    }

    /** Takes a promised hour back; what was built for it stays on the desk. */
    public Outcome<EpisodeId> withdraw(EducatorId who, EpisodeId id) {
        return jdbi.inTransaction(handle -> {
            boolean withdrawn = episodes.ownedBy(handle, who, id).isPresent() && episodes.unschedule(handle, id);
            if (!withdrawn) {
                return Outcome.refused("", "publishing.problem.notpromised");
            }
            audit.append(handle, who, "episode.withdrawn", id.value());
            return Outcome.done(id);
        });
    }

    private Outcome<ReleaseId> prepare(EducatorId who, EpisodeId id, Promise promise) {
        if (!settings.current().imprint().isComplete()) {
            return Outcome.refused("", "publishing.problem.imprint");
        }
        var problems = desk.draft(who, id)
                .map(draft -> Preflight.problems(draft.document()))
                .orElseGet(List::of);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var revision = desk.makeRevision(who, id, "");
        return revision.result()
                .map(made -> enter(who, made, promise))
                .orElseGet(() -> Outcome.refused(revision.problems()));
    }

    private Outcome<ReleaseId> enter(EducatorId who, Revision revision, Promise promise) {
        var entered = jdbi.inTransaction(handle -> enter(handle, who, revision, promise));
        entered.ifPresent(queue::add);
        return entered.map(Outcome::done).orElseGet(() -> Outcome.refused("", "publishing.problem.unchanged"));
    }

    /** Empty where this revision is out already and would be built the same way again. */
    private Optional<ReleaseId> enter(Handle handle, EducatorId who, Revision revision, Promise promise) {
        var episode = episodes.find(handle, revision.episode()).orElseThrow();
        if (!episode.isPublished()) {
            episodes.schedule(handle, episode.id(), promise.at(), promise.zone(), promise.local());
        }
        audit.append(handle, who, "episode.promised", episode.id() + " revision " + revision.number());
        return release(handle, episode, revision);
    }

    /** Readies this revision anew, for an episode that was renamed or moved since its release was built. */
    ReleaseId renew(Handle handle, Episode episode, Release stale) {
        var revision = revisions.find(handle, stale.recipe().revision()).orElseThrow();
        return releases.create(handle, episode.id(), recipe(handle, episode, revision), false, clock.instant());
    }

    /** Whether a release that waits for its hour still names its episode as it is now. */
    boolean isStale(Handle handle, Episode episode, Release release) {
        var revision = revisions.find(handle, release.recipe().revision()).orElseThrow();
        return !recipe(handle, episode, revision).makesTheSameAs(release.recipe());
    }

    private Optional<ReleaseId> release(Handle handle, Episode episode, Revision revision) {
        var recipe = recipe(handle, episode, revision);
        var latest = releases.latest(handle, episode.id())
                .filter(made -> made.recipe().makesTheSameAs(recipe) && !made.isFailed());
        if (latest.isEmpty()) {
            return Optional.of(fresh(handle, episode, recipe));
        }
        return latest.filter(made -> made.publishedAt().isEmpty()).map(Release::id);
    }

    /** What was looked at in a preview goes out as it was seen. */
    private ReleaseId fresh(Handle handle, Episode episode, Recipe recipe) {
        var now = clock.instant();
        return releases.trial(handle, episode.id(), recipe)
                .map(seen -> releases.adopt(handle, seen, episode.isPublished(), now))
                .orElseGet(() -> releases.create(handle, episode.id(), recipe, episode.isPublished(), now));
    }

    /** Builds drafts to be looked at. */
    public Trials trials() {
        return new Trials(jdbi, clock, desk, episodes, releases, recipes, queue);
    }

    private Recipe recipe(Handle handle, Episode episode, Revision revision) {
        return recipes.of(handle, episode, revision);
    }
}
