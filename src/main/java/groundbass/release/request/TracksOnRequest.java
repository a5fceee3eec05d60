package groundbass.release.request;

import groundbass.effort.Busy;
import groundbass.effort.ConcurrencyLimit;
import groundbass.release.Release;
import groundbass.release.ReleaseBuilder;
import groundbass.release.ReleaseFile;
import groundbass.release.WantedTrack;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Optional;

/**
 * Practice tracks at any tempo and in any mix, made when somebody first asks for them, one at a time on each server.
 * Thread-safe.
 */
public final class TracksOnRequest {
    private static final int WAITING = 6;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final PassingTracks tracks;
    private final ReleaseBuilder builder;
    private final ConcurrencyLimit machine = new ConcurrencyLimit(1, WAITING, PATIENCE);

    public TracksOnRequest(PassingTracks tracks, ReleaseBuilder builder) {
        this.tracks = tracks;
        this.builder = builder;
    }

    /**
     * A track of a release by the name of its file; empty where it has none of that name, and never will.
     *
     * @throws Busy where too many wait for theirs, or where there is no room for one more now
     */
    public Optional<ReleaseFile> find(Release release, String name) {
        if (!release.makesTracks()) {
            return Optional.empty();
        }
        return WantedTrack.named(name).flatMap(wanted -> machine.take(() -> kept(release, wanted)));
    }

    /** Whoever waited may find it made. */
    private Optional<ReleaseFile> kept(Release release, WantedTrack wanted) {
        return tracks.named(release.id(), wanted.name()).or(() -> made(release, wanted));
    }

    private Optional<ReleaseFile> made(Release release, WantedTrack wanted) {
        tracks.makeRoom(release.id());
        try {
            return builder.onRequest(release, wanted).flatMap(file -> tracks.enter(release.id(), file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
