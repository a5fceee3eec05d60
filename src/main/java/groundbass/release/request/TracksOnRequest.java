package groundbass.release.request;

import groundbass.effort.Busy;
import groundbass.effort.ConcurrencyLimit;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseBuilder;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.release.WantedTrack;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Practice tracks at any tempo and in any mix, made when somebody first asks for them and kept with their release. One is
 * made at a time on each server, and nobody can fill a disk with them: a release keeps {@value #MOST}, a site {@value #MOST_BYTES} bytes.
 * Thread-safe.
 */
public final class TracksOnRequest {
    static final int MOST = 120;
    static final long MOST_BYTES = 2_000_000_000L;

    /** When more could fit at the earliest: files of releases go with their lessons. */
    private static final Duration WHEN_FULL = Duration.ofHours(1);

    private static final int WAITING = 6;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final Jdbi jdbi;
    private final Releases releases;
    private final ReleaseBuilder builder;
    private final ConcurrencyLimit machine = new ConcurrencyLimit(1, WAITING, PATIENCE);

    public TracksOnRequest(Jdbi jdbi, Releases releases, ReleaseBuilder builder) {
        this.jdbi = jdbi;
        this.releases = releases;
        this.builder = builder;
    }

    /**
     * A track of a release by the name of its file; empty where it has none of that name, and never will.
     *
     * @throws Busy where too many wait for theirs, or where no more are kept
     */
    public Optional<ReleaseFile> find(Release release, String name) {
        if (!release.makesTracks()) {
            return Optional.empty();
        }
        return WantedTrack.named(name).flatMap(wanted -> machine.take(() -> made(release, wanted)));
    }

    /** Whoever waited may find it made. */
    private Optional<ReleaseFile> made(Release release, WantedTrack wanted) {
        var before = releases.files().named(release.id(), wanted.name());
        if (before.isPresent()) {
            return before;
        }
        demandRoom(release.id());
        try {
            return builder.onRequest(release, wanted).flatMap(file -> entered(release.id(), file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void demandRoom(ReleaseId release) {
        boolean full = jdbi.withHandle(handle -> handle.createQuery("""
                        select (select count(*) from release_file where release_id = :release and role = :role) >= :most
                            or (select coalesce(sum(byte_count), 0) from release_file where role = :role) >= :bytes""")
                .bind("release", release)
                .bind("role", FileRole.ON_REQUEST)
                .bind("most", MOST)
                .bind("bytes", MOST_BYTES)
                .mapTo(Boolean.class)
                .one());
        if (full) {
            throw new Busy(WHEN_FULL);
        }
    }

    /** Another server may have made it meanwhile: then its file stands for both. Empty where the release is gone. */
    private Optional<ReleaseFile> entered(ReleaseId release, ReleaseFile file) {
        return jdbi.inTransaction(handle -> {
            if (!releases.files().lock(handle, release)) {
                return Optional.empty();
            }
            var before = releases.files().named(release, file.name());
            if (before.isEmpty()) {
                releases.files().append(handle, release, file);
            }
            return before.or(() -> Optional.of(file));
        });
    }
}
