package groundbass.catalog.upload;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.UploadId;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Uploads as rows. */
final class UploadRepository {
    private static final String SELECT = """
            select id, educator_id, episode_id, original_name, byte_count, sha256, facts, created_at from upload\s""";

    void insert(Handle handle, Upload upload) {
        handle.createUpdate("""
                        insert into upload (id, educator_id, episode_id, original_name, media_type, byte_count,
                                            sha256, facts, created_at)
                        values (:id, :by, :episode, :name, :type, :bytes, :sha256, :facts, :at)""")
                .bind("id", upload.id().value())
                .bind("by", upload.by().value())
                .bind("episode", upload.episode().value())
                .bind("name", upload.originalName())
                .bind("type", upload.mediaType())
                .bind("bytes", upload.blob().length())
                .bind("sha256", upload.blob().sha256().hex())
                .bind("facts", FactsJson.write(upload.facts()))
                .bind("at", upload.createdAt())
                .execute();
    }

    Optional<Upload> find(Handle handle, UploadId id) {
        return handle.createQuery(SELECT + "where id = :id")
                .bind("id", id.value())
                .map(UploadRepository::upload)
                .findOne();
    }

    List<Upload> of(Handle handle, EpisodeId episode) {
        return handle.createQuery(SELECT + "where episode_id = :episode order by created_at, id")
                .bind("episode", episode.value())
                .map(UploadRepository::upload)
                .list();
    }

    /** Bytes of all that somebody has sent. */
    long bytesOf(Handle handle, EducatorId educator) {
        return handle.createQuery("select coalesce(sum(byte_count), 0) from upload where educator_id = :educator")
                .bind("educator", educator.value())
                .mapTo(Long.class)
                .one();
    }

    boolean names(Handle handle, Sha256 sha256) {
        return handle.createQuery("select count(*) from upload where sha256 = :sha256 or heard_sha256 = :sha256")
                        .bind("sha256", sha256.hex())
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    /** Those that nobody has listened to, oldest first. */
    List<Upload> unheard(Handle handle, int most) {
        return handle.createQuery(SELECT + "where heard = '' order by created_at, id fetch first :most rows only")
                .bind("most", most)
                .map(UploadRepository::upload)
                .list();
    }

    String heard(Handle handle, UploadId id) {
        return handle.createQuery("select heard from upload where id = :id")
                .bind("id", id.value())
                .mapTo(String.class)
                .findOne()
                .orElse("");
    }

    /** Notes that somebody begins to listen. @return for the how manieth time */
    int beginHearing(Handle handle, UploadId id) {
        handle.createUpdate("update upload set hearing_tries = hearing_tries + 1 where id = :id")
                .bind("id", id.value())
                .execute();
        return handle.createQuery("select hearing_tries from upload where id = :id")
                .bind("id", id.value())
                .mapTo(Integer.class)
                .one();
    }

    /** @param sha256 of the file that goes with it, empty for none */
    void keepHeard(Handle handle, UploadId id, String heard, String sha256) {
        handle.createUpdate("update upload set heard = :heard, heard_sha256 = :sha256 where id = :id")
                .bind("heard", heard)
                .bind("sha256", sha256)
                .bind("id", id.value())
                .execute();
    }

    /** @return of how many uploads */
    int forgetHeard(Handle handle, Sha256 sha256) {
        return handle.createUpdate(
                        "update upload set heard = '', heard_sha256 = '', hearing_tries = 0 where heard_sha256 = :sha256")
                .bind("sha256", sha256.hex())
                .execute();
    }

    private static Upload upload(ResultSet row, StatementContext context) throws SQLException {
        return new Upload(
                new UploadId(row.getString("id")),
                new EducatorId(row.getString("educator_id")),
                new EpisodeId(row.getString("episode_id")),
                row.getString("original_name"),
                new Blob(new Sha256(row.getString("sha256")), row.getLong("byte_count")),
                FactsJson.read(row.getString("facts")),
                Instants.from(row, "created_at"));
    }
}
