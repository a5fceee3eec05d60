package groundbass.publishing;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Revision;
import groundbass.release.BuildSpec;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import org.jdbi.v3.core.Handle;

/** Fixes what goes out: here alone a release that is to be published is entered. */
final class Freezing {
    private final BuildSpecs specs;
    private final Releases releases;
    private final Clock clock;

    Freezing(BuildSpecs specs, Releases releases, Clock clock) {
        this.specs = specs;
        this.releases = releases;
        this.clock = clock;
    }

    /**
     * The release that shows this revision of an episode as the episode is named now: the latest, where it would be made
     * the same way, else a new one that waits to be built. What a newer server beside this one has entered stays: each would
     * have it made its own way at every pass.
     */
    Release release(Handle handle, Episode episode, Revision revision) {
        var spec = specs.of(handle, episode, revision);
        return releases.latest(episode.id())
                .filter(latest -> !latest.isOvertaken())
                .filter(latest ->
                        latest.spec().makesTheSameAs(spec) || latest.spec().isNewerThan(spec))
                .or(() -> releases.find(fresh(handle, episode, spec)))
                .orElseThrow();
    }

    /** What was looked at in a preview goes out as it was seen. */
    private ReleaseId fresh(Handle handle, Episode episode, BuildSpec spec) {
        var now = clock.instant();
        return releases.trials()
                .find(handle, episode.id(), spec)
                .map(seen -> releases.trials().adopt(handle, seen, episode.isPublished(), now))
                .orElseGet(() -> releases.create(handle, episode.id(), spec, episode.isPublished(), now));
    }
}
