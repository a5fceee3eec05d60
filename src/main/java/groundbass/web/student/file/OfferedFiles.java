package groundbass.web.student.file;

import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.web.student.lesson.TimedCache;
import java.time.Clock;
import java.util.Optional;

/** Finds files that readers may have. What is out stays as it is, so what was found holds for good. Thread-safe. */
public final class OfferedFiles {
    private static final int MOST = 2_000;

    private record Address(ReleaseId release, String name) {}

    private final Releases releases;
    private final TimedCache<Address, OfferedFile> known;

    public OfferedFiles(Releases releases, Clock clock) {
        this.releases = releases;
        this.known = TimedCache.small(clock, TimedCache.FOR_GOOD, MOST);
    }

    /** By the two parts of its address, whatever somebody wrote there. */
    Optional<OfferedFile> find(String release, String name) {
        return ReleaseId.parse(release).flatMap(id -> known.get(new Address(id, name), () -> read(id, name)));
    }

    private Optional<OfferedFile> read(ReleaseId id, String name) {
        return releases.find(id)
                .filter(release -> release.publishedAt().isPresent())
                .flatMap(release -> offered(release, name));
    }

    private Optional<OfferedFile> offered(Release release, String name) {
        return releases.file(release.id(), name)
                .map(file -> OfferedFile.of(release, file))
                .filter(file -> file.offered() || file.playable());
    }
}
