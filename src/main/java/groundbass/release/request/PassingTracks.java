package groundbass.release.request;

import groundbass.effort.Busy;
import groundbass.release.FileRole;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * The rows of tracks that were made on request. A release and a site keep so many of them: where one more would be too
 * much the oldest go, and are made again when somebody asks for them, by the same version byte by byte the same. Thread-safe.
 */
public final class PassingTracks {
    /** Of one release. */
    public static final int USUAL_FILES = 120;
    /** Of a site. */
    public static final long USUAL_BYTES = 2_000_000_000L;

    /** How long each stays at least: whoever has asked for it may take it in pieces. */
    static final Duration STAY = Duration.ofHours(1);

    private final Jdbi jdbi;
    private final Releases releases;
    private final int files;
    private final long bytes;
    private final Clock clock;

    /**
     * @param files that one release keeps at most
     * @param bytes that a site keeps at most, and a track more
     */
    public PassingTracks(Jdbi jdbi, Releases releases, int files, long bytes, Clock clock) {
        this.jdbi = jdbi;
        this.releases = releases;
        this.files = files;
        this.bytes = bytes;
        this.clock = clock;
    }

    Optional<ReleaseFile> named(ReleaseId release, String name) {
        return releases.files().named(release, name);
    }

    /**
     * Lets the oldest go where one more of a release would be too much. Their bytes go with the sweep of stored files:
     * whoever is taking one ends with all of it.
     *
     * @throws Busy where all of them are too young to go
     */
    void makeRoom(ReleaseId release) {
        if (!isFull(release)) {
            return;
        }
        releases.files().letGo(release, files, bytes, clock.instant().minus(STAY));
        if (isFull(release)) {
            throw new Busy(STAY);
        }
    }

    private boolean isFull(ReleaseId release) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select (select count(*) from release_file where release_id = :release and role = :role) >= :files
                            or (select coalesce(sum(byte_count), 0) from release_file where role = :role) >= :bytes""")
                .bind("release", release)
                .bind("role", FileRole.ON_REQUEST)
                .bind("files", files)
                .bind("bytes", bytes)
                .mapTo(Boolean.class)
                .one());
    }

    /** Another server may have made it meanwhile: then its file stands for both. Empty where the release is gone. */
    Optional<ReleaseFile> enter(ReleaseId release, ReleaseFile file) {
        return jdbi.inTransaction(handle -> {
            if (!releases.files().lock(handle, release)) {
                return Optional.empty();
            }
            var before = named(release, file.name());
            if (before.isEmpty()) {
                releases.files().appendPassing(handle, release, file, clock.instant());
            }
            return before.or(() -> Optional.of(file));
        });
    }
}
