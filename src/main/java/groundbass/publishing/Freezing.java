package groundbass.publishing;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Revision;
import groundbass.release.Recipe;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import org.jdbi.v3.core.Handle;

/** Fixes what goes out: here alone a release that is to be published is entered. */
final class Freezing {
    private final Recipes recipes;
    private final Releases releases;
    private final Clock clock;

    Freezing(Recipes recipes, Releases releases, Clock clock) {
        this.recipes = recipes;
        this.releases = releases;
        this.clock = clock;
    }

    /**
     * The release that shows this revision of an episode as the episode is named now: the latest, where it would be made
     * the same way, else a new one that waits to be built.
     */
    Release release(Handle handle, Episode episode, Revision revision) {
        var recipe = recipes.of(handle, episode, revision);
        return releases.latest(handle, episode.id())
                .filter(latest -> !latest.isOvertaken() && latest.recipe().makesTheSameAs(recipe))
                .or(() -> releases.find(handle, fresh(handle, episode, recipe)))
                .orElseThrow();
    }

    /** What was looked at in a preview goes out as it was seen. */
    private ReleaseId fresh(Handle handle, Episode episode, Recipe recipe) {
        var now = clock.instant();
        return releases.trial(handle, episode.id(), recipe)
                .map(seen -> releases.adopt(handle, seen, episode.isPublished(), now))
                .orElseGet(() -> releases.create(handle, episode.id(), recipe, episode.isPublished(), now));
    }
}
