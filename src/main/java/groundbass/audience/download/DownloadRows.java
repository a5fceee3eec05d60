package groundbass.audience.download;

import groundbass.audience.student.StudentId;
import groundbass.store.Instants;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The SQL of download records; every method works in the caller's transaction. */
public final class DownloadRows {
    /** All that makes a {@link Download}. */
    public static final String COLUMNS = "download.id, download.release_id as release, download.episode_id as episode,"
            + " download.file_name as name, download.file_size as size, download.student_id as student,"
            + " download.started_at, download.touched_at, download.state,"
            + " download.bytes_sent, download.robot, download.own, download.repeated";

    /** Whether a {@code download} of a student is their first of its lesson: ids grow with time. */
    public static final String FIRST_OF_LESSON = """
            not exists (select 1 from download earlier
                where earlier.student_id = download.student_id and earlier.episode_id = download.episode_id
                    and earlier.id < download.id)""";

    private static final String INSERT = """
            insert into download (id, release_id, episode_id, file_name, file_size, student_id, started_at, touched_at,
                state, covered, bytes_sent, robot, own, repeated)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";

    private static final String COMPLETE_IF_WHOLE = """
            update download set covered = ?, state = ?, bytes_sent = bytes_sent + ?, touched_at = ?
            where id = ? and file_size = ?""";

    private DownloadRows() {}

    public static void insert(Handle handle, Download download) {
        ReleasedFile file = download.file();
        execute(
                handle,
                INSERT,
                download.id().value(),
                file.release(),
                file.episode().value(),
                file.name(),
                file.size(),
                download.student().map(StudentId::value).orElse(null),
                Instants.toColumn(download.startedAt()),
                Instants.toColumn(download.touchedAt()),
                download.state().value(),
                Coverage.NOTHING.toString(),
                download.bytesSent(),
                download.robot(),
                download.own(),
                download.repeated());
    }

    static Optional<Download> find(Handle handle, DownloadId id) {
        return handle.createQuery("select " + COLUMNS + " from download where id = :id")
                .bind("id", id)
                .mapTo(Download.class)
                .findOne();
    }

    /** The newest download of a file by a student that began after {@code since}. */
    static Optional<Download> latest(Handle handle, StudentId student, ReleasedFile file, Instant since) {
        return handle.createQuery("""
                        select <columns> from download
                        where student_id = :student and release_id = :release and file_name = :name
                            and started_at > :since
                        order by started_at desc, id fetch first 1 row only""")
                .define("columns", COLUMNS)
                .bind("student", student)
                .bind("release", file.release())
                .bind("name", file.name())
                .bind("since", since)
                .mapTo(Download.class)
                .findOne();
    }

    /**
     * Notes on the records of a student who leaves what is counted of them: that somebody known took this, and which file of
     * each lesson was their first. Nothing in it leads from one record to another.
     */
    public static void depart(Handle handle, StudentId student) {
        handle.createUpdate("""
                        update download set departed = true, departed_first = <first>
                        where student_id = :student""")
                .define("first", FIRST_OF_LESSON)
                .bind("student", student)
                .execute();
    }

    static int touch(Handle handle, DownloadId id, DownloadState state, Instant now) {
        return handle.createUpdate("update download set touched_at = :now, state = :state where id = :id")
                .bind("now", now)
                .bind("state", state)
                .bind("id", id)
                .execute();
    }

    /** What has been sent of a download, locked until the transaction ends: two ranges may end at once. */
    static Optional<Progress> lock(Handle handle, DownloadId id) {
        return handle.createQuery("select file_size as size, covered, state from download where id = :id for update")
                .bind("id", id)
                .mapTo(Progress.class)
                .findOne();
    }

    /** Completes a download if the span is all of its file; whatever was sent before no longer matters. */
    static int completeIfWhole(Handle handle, DownloadId id, ByteSpan span, Instant now) {
        return execute(
                handle,
                COMPLETE_IF_WHOLE,
                Coverage.NOTHING.plus(span).toString(),
                DownloadState.COMPLETE.value(),
                span.length(),
                Instants.toColumn(now),
                id.value(),
                span.length());
    }

    /** What every download does goes to the driver as it is: to bind by name took as long as to write the row. */
    private static int execute(Handle handle, String sql, Object... parameters) {
        try (var statement = handle.getConnection().prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) statement.setObject(i + 1, parameters[i]);
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("the download cannot be recorded", e);
        }
    }

    static int advance(Handle handle, DownloadId id, Progress progress, long bytes, Instant now) {
        return handle.createUpdate("""
                        update download set covered = :covered, state = :state, bytes_sent = bytes_sent + :bytes,
                            touched_at = :now
                        where id = :id""")
                .bind("covered", progress.covered())
                .bind("state", progress.state())
                .bind("bytes", bytes)
                .bind("now", now)
                .bind("id", id)
                .execute();
    }

    /** Closes downloads begun after {@code from} that were last heard of at {@code silentSince} or before. */
    static int breakOffSilent(Handle handle, Instant from, Instant silentSince) {
        return handle.createUpdate("""
                        update download set state = :off
                        where state = :on and started_at > :from and touched_at <= :silent""")
                .bind("off", DownloadState.BROKEN_OFF)
                .bind("on", DownloadState.STARTED)
                .bind("from", from)
                .bind("silent", silentSince)
                .execute();
    }

    /** Closes those of a span of ids that are still open, though none of them can be on its way any more. */
    public static void breakOff(Handle handle, String firstId, String endId) {
        handle.createUpdate("update download set state = :off where state = :on and id >= :from and id < :until")
                .bind("off", DownloadState.BROKEN_OFF)
                .bind("on", DownloadState.STARTED)
                .bind("from", firstId)
                .bind("until", endId)
                .execute();
    }
}
