package groundbass.web.student.file;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.release.request.TracksOnRequest;
import groundbass.web.student.lesson.TimedCache;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;

/**
 * Finds files that readers may have. What is out stays as it is, so what was found holds for good, but for tracks that
 * were made on request; whether its lesson was taken back is asked anew, and holds for a second. Thread-safe.
 */
public final class OfferedFiles {
    private static final int MOST = 2_000;
    private static final Duration FRESH = Duration.ofSeconds(1);

    private record Address(ReleaseId release, String name) {}

    private final Releases releases;
    private final Episodes episodes;
    private final TracksOnRequest tracks;
    private final TimedCache<Address, OfferedFile> known;
    private final TimedCache<EpisodeId, Boolean> out;

    public OfferedFiles(Releases releases, Episodes episodes, TracksOnRequest tracks, Clock clock) {
        this.releases = releases;
        this.episodes = episodes;
        this.tracks = tracks;
        this.out = TimedCache.small(clock, FRESH, MOST);
        this.known = TimedCache.small(clock, TimedCache.FOR_GOOD, MOST);
    }

    /** By the two parts of its address, whatever somebody wrote there. */
    Optional<OfferedFile> find(String release, String name) {
        return ReleaseId.parse(release).flatMap(id -> staying(id, name).or(() -> read(id, name)));
    }

    private Optional<OfferedFile> staying(ReleaseId id, String name) {
        return known.get(new Address(id, name), () -> read(id, name).filter(OfferedFile::stays));
    }

    /** A release that is or was out; whether its lesson is now, {@link #isOut} says. */
    Optional<Release> out(String release) {
        return ReleaseId.parse(release).flatMap(this::out);
    }

    private Optional<Release> out(ReleaseId id) {
        return releases.find(id).filter(release -> release.publishedAt().isPresent());
    }

    /** Whether students can have files of a lesson now: it was not taken back. */
    boolean isOut(EpisodeId episode) {
        return out.get(episode, () -> episodes.find(episode).map(Episode::isOut))
                .orElse(false);
    }

    private Optional<OfferedFile> read(ReleaseId id, String name) {
        return out(id).flatMap(release -> offered(release, name));
    }

    /** A release whose lesson may make more practice tracks. */
    Optional<Release> making(String release) {
        return out(release).filter(Release::makesTracks);
    }

    /**
     * A practice track that nobody has asked for yet, made now; empty where there is none of that name.
     *
     * @throws groundbass.effort.Busy where too many wait for theirs, or where no more can be kept now
     */
    Optional<OfferedFile> made(Release release, String name) {
        return tracks.find(release, name).map(file -> OfferedFile.of(release, file));
    }

    private Optional<OfferedFile> offered(Release release, String name) {
        return releases.files()
                .named(release.id(), name)
                .map(file -> OfferedFile.of(release, file))
                .filter(file -> file.offered() || file.playable());
    }
}
