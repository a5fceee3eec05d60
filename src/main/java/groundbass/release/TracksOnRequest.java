package groundbass.release;

import groundbass.effort.ConcurrencyLimit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Practice tracks at any tempo and in any mix, made when somebody first asks for them and kept with their release. One is
 * made at a time; of each release the {@value #MOST} that were made last are kept. Thread-safe.
 */
public final class TracksOnRequest {
    static final int MOST = 40;

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
     * @throws groundbass.effort.Busy where too many wait for theirs
     */
    public Optional<ReleaseFile> find(Release release, String name) {
        if (!release.isReady() || !release.spec().makesTracksOnRequest()) {
            return Optional.empty();
        }
        return WantedTrack.named(name).flatMap(wanted -> machine.take(() -> made(release, wanted)));
    }

    /** Whoever waited may find it made. */
    private Optional<ReleaseFile> made(Release release, WantedTrack wanted) {
        var before = releases.file(release.id(), wanted.name());
        if (before.isPresent()) {
            return before;
        }
        try {
            var made = builder.onRequest(release, wanted);
            made.ifPresent(file -> enter(release.id(), file));
            return made;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void enter(ReleaseId release, ReleaseFile file) {
        jdbi.useTransaction(handle -> {
            int last = handle.createQuery("select max(place) from release_file where release_id = :release")
                    .bind("release", release)
                    .mapTo(Integer.class)
                    .one();
            handle.createUpdate("""
                            insert into release_file (release_id, place, name, role, media_type, byte_count, sha256)
                            values (:release, :place, :name, :role, :mediaType, :size, :sha256)""")
                    .bind("release", release)
                    .bind("place", last + 1)
                    .bindMethods(file)
                    .execute();
            handle.createUpdate("""
                            delete from release_file where release_id = :release and role = :role and place not in (
                                select place from release_file where release_id = :release and role = :role
                                order by place desc fetch first :most rows only)""")
                    .bind("release", release)
                    .bind("role", FileRole.ON_REQUEST)
                    .bind("most", MOST)
                    .execute();
        });
    }
}
