package groundbass.audience;

import groundbass.catalog.EpisodeId;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;

/** The SQL of download records; every method works in the caller's transaction. */
final class DownloadRows {
    private DownloadRows() {}

    static void insert(Handle handle, Download download, Optional<String> visitor) {
        ReleasedFile file = download.file();
        handle.createUpdate("""
                        insert into download (id, release_id, episode_id, file_name, file_size, student_id, visitor,
                            started_at, touched_at, state, covered, bytes_sent, robot, repeated)
                        values (:id, :release, :episode, :name, :size, :student, :visitor,
                            :started, :touched, :state, '', :sent, :robot, :repeated)""")
                .bind("id", download.id().value())
                .bind("release", file.release())
                .bind("episode", file.episode().value())
                .bind("name", file.name())
                .bind("size", file.size())
                .bind("student", download.student().map(StudentId::value).orElse(null))
                .bind("visitor", visitor.orElse(null))
                .bind("started", Instants.toColumn(download.startedAt()))
                .bind("touched", Instants.toColumn(download.touchedAt()))
                .bind("state", download.state().column())
                .bind("sent", download.bytesSent())
                .bind("robot", download.robot())
                .bind("repeated", download.repeated())
                .execute();
    }

    static Optional<Download> find(Handle handle, DownloadId id) {
        return handle.createQuery("select * from download where id = :id")
                .bind("id", id.value())
                .map(DownloadRows::download)
                .findOne();
    }

    /** The newest download of a file by the same reader that began after {@code since}. */
    static Optional<Download> latest(Handle handle, FileRequest request, Optional<String> visitor, Instant since) {
        Optional<StudentId> student = request.taker().student();
        if (student.isPresent())
            return latest(handle, "student_id", student.get().value(), request.file(), since);
        return visitor.flatMap(digest -> latest(handle, "visitor", digest, request.file(), since));
    }

    private static Optional<Download> latest(
            Handle handle, String column, String reader, ReleasedFile file, Instant since) {
        Query query = handle.createQuery("""
                select * from download
                where <column> = :reader and release_id = :release and file_name = :name and started_at > :since
                order by started_at desc, id fetch first 1 row only""");
        return query.define("column", column)
                .bind("reader", reader)
                .bind("release", file.release())
                .bind("name", file.name())
                .bind("since", Instants.toColumn(since))
                .map(DownloadRows::download)
                .findOne();
    }

    static int touch(Handle handle, DownloadId id, DownloadState state, Instant now) {
        return handle.createUpdate("update download set touched_at = :now, state = :state where id = :id")
                .bind("now", Instants.toColumn(now))
                .bind("state", state.column())
                .bind("id", id.value())
                .execute();
    }

    /** What has been sent of a download, locked until the transaction ends: two ranges may end at once. */
    static Optional<Progress> lock(Handle handle, DownloadId id) {
        return handle.createQuery("select file_size, covered, state from download where id = :id for update")
                .bind("id", id.value())
                .map(Progress::of)
                .findOne();
    }

    /** Completes a download if the span is all of its file; whatever was sent before no longer matters. */
    static int completeIfWhole(Handle handle, DownloadId id, ByteSpan span, Instant now) {
        return handle.createUpdate("""
                        update download set covered = :covered, state = :complete, bytes_sent = bytes_sent + :bytes,
                            touched_at = :now
                        where id = :id and file_size = :bytes""")
                .bind("covered", Coverage.NOTHING.plus(span).toString())
                .bind("complete", DownloadState.COMPLETE.column())
                .bind("bytes", span.length())
                .bind("now", Instants.toColumn(now))
                .bind("id", id.value())
                .execute();
    }

    static int advance(Handle handle, DownloadId id, Progress progress, long bytes, Instant now) {
        return handle.createUpdate("""
                        update download set covered = :covered, state = :state, bytes_sent = bytes_sent + :bytes,
                            touched_at = :now
                        where id = :id""")
                .bind("covered", progress.covered().toString())
                .bind("state", progress.state().column())
                .bind("bytes", bytes)
                .bind("now", Instants.toColumn(now))
                .bind("id", id.value())
                .execute();
    }

    /** Empties the digests of downloads that began after {@code from} and not after {@code until}. */
    static int forgetVisitors(Handle handle, Instant from, Instant until) {
        return handle.createUpdate("""
                        update download set visitor = null
                        where visitor is not null and started_at > :from and started_at <= :until""")
                .bind("from", Instants.toColumn(from))
                .bind("until", Instants.toColumn(until))
                .execute();
    }

    /** Closes downloads begun after {@code from} that were last heard of at {@code silentSince} or before. */
    static int breakOffSilent(Handle handle, Instant from, Instant silentSince) {
        return handle.createUpdate("""
                        update download set state = :off
                        where state = :on and started_at > :from and touched_at <= :silent""")
                .bind("off", DownloadState.BROKEN_OFF.column())
                .bind("on", DownloadState.STARTED.column())
                .bind("from", Instants.toColumn(from))
                .bind("silent", Instants.toColumn(silentSince))
                .execute();
    }

    static Download download(ResultSet row, StatementContext context) throws SQLException {
        return new Download(
                new DownloadId(row.getString("id")),
                file(row),
                Optional.ofNullable(row.getString("student_id")).map(StudentId::new),
                Instants.from(row, "started_at"),
                Instants.from(row, "touched_at"),
                DownloadState.of(row.getString("state")),
                row.getLong("bytes_sent"),
                row.getBoolean("robot"),
                row.getBoolean("repeated"));
    }

    private static ReleasedFile file(ResultSet row) throws SQLException {
        return new ReleasedFile(
                row.getString("release_id"),
                new EpisodeId(row.getString("episode_id")),
                row.getString("file_name"),
                row.getLong("file_size"));
    }
}
