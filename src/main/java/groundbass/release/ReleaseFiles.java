package groundbass.release;

import groundbass.identity.Sha256;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The rows of the files that releases consist of. */
public final class ReleaseFiles {
    private static final String SELECT = "select name, role, media_type, byte_count as size, sha256 from release_file ";

    private final Jdbi jdbi;

    ReleaseFiles(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** In their order. */
    public List<ReleaseFile> of(ReleaseId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where release_id = :id order by place")
                .bind("id", id)
                .mapTo(ReleaseFile.class)
                .list());
    }

    /** A file by its name; a name from outside is only ever compared, never made a path. */
    public Optional<ReleaseFile> named(ReleaseId id, String name) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where release_id = :id and name = :name")
                .bind("id", id)
                .bind("name", name)
                .mapTo(ReleaseFile.class)
                .findOne());
    }

    /** Until the transaction ends, no other server enters a file of this release. Whether it is there. */
    public boolean lock(Handle handle, ReleaseId id) {
        return handle.createQuery("select id from release where id = :id for update")
                .bind("id", id)
                .mapTo(ReleaseId.class)
                .findOne()
                .isPresent();
    }

    /** Whether any release needs this content; for the sweep of stored files. What is put together as it is sent needs none. */
    public boolean names(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery(
                                "select count(*) from release_file where sha256 = :sha256 and role <> :streamed")
                        .bind("sha256", sha256)
                        .bind("streamed", FileRole.ZIP)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /** The releases that need this content, the newest first. */
    public List<Release> needing(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where id in (select release_id from release_file where sha256 = :sha256)
                        order by created_at desc, id""")
                .bind("sha256", sha256)
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /** Enters one behind the others that may go again. */
    public void appendPassing(Handle handle, ReleaseId id, ReleaseFile file, Instant now) {
        int last = handle.createQuery("select max(place) from release_file where release_id = :release")
                .bind("release", id)
                .mapTo(Integer.class)
                .one();
        enter(handle, id, last + 1, List.of(file));
        handle.createUpdate("update release_file set made_at = :now where release_id = :release and name = :name")
                .bind("now", now)
                .bind("release", id)
                .bind("name", file.name())
                .execute();
    }

    /**
     * Lets those go that may: counted from the youngest on, those at which there are so many of this release, or so many
     * bytes of all. An earlier version that runs beside this one enters them without their hour; such a file counts as old.
     *
     * @param old none goes that was made after it
     */
    public void letGo(ReleaseId id, int files, long bytes, Instant old) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        delete from release_file
                        where role = :role and coalesce(made_at, :old) <= :old and (release_id, name) in (
                            select release_id, name from (
                                select release_id, name,
                                    sum(byte_count) over (order by coalesce(made_at, :old) desc, release_id, name) as so_far,
                                    row_number() over (partition by release_id
                                        order by coalesce(made_at, :old) desc, name) as place
                                from release_file where role = :role) passing
                            where so_far >= :bytes or release_id = :release and place >= :files)""")
                .bind("role", FileRole.ON_REQUEST)
                .bind("old", old)
                .bind("release", id)
                .bind("files", files)
                .bind("bytes", bytes)
                .execute());
    }

    static void enter(Handle handle, ReleaseId id, int first, List<ReleaseFile> files) {
        var batch = handle.prepareBatch("""
                insert into release_file (release_id, place, name, role, media_type, byte_count, sha256)
                values (:id, :place, :name, :role, :mediaType, :size, :sha256)""");
        for (int place = 0; place < files.size(); place++) {
            batch.bind("id", id)
                    .bind("place", first + place)
                    .bindMethods(files.get(place))
                    .add();
        }
        batch.execute();
    }
}
