package groundbass.catalog.upload;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.upload.SentTable.Presence;
import groundbass.document.PictureId;
import groundbass.document.UploadId;
import groundbass.identity.Sha256;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Uploads as rows, recordings and pictures. */
public final class UploadRepository {
    private static final String SELECT = """
            select id, educator_id, episode_id as episode, original_name, byte_count as length, sha256, facts, created_at
            from upload\s""";

    private final Jdbi jdbi;
    private final PictureRows pictures;

    public UploadRepository(Jdbi jdbi) {
        this.jdbi = jdbi;
        this.pictures = new PictureRows(jdbi);
    }

    /** Whether a recording is there. */
    public boolean has(UploadId id) {
        return find(id, Presence.NOW).isPresent();
    }

    /** Whether a picture for notes is there. */
    public boolean hasPicture(PictureId id) {
        return pictures.find(id, Presence.NOW).isPresent();
    }

    PictureRows pictures() {
        return pictures;
    }

    void insert(Handle handle, Upload upload) {
        handle.createUpdate("""
                        insert into upload (id, educator_id, episode_id, original_name, media_type, byte_count,
                                            sha256, facts, created_at)
                        values (:id, :by, :episode, :originalName, :mediaType, :length, :sha256, :facts, :createdAt)""").bindMethods(upload).bindMethods(upload.blob()).execute();
    }

    /**
     * Forgets what was sent for a draft that is deleted; the files go with the sweep. What a draft or a revision of
     * another lesson plays, such as a duplicate's, is that lesson's from now on.
     */
    public void forget(Handle handle, EpisodeId episode) {
        for (var upload : of(episode)) {
            SentTable.UPLOAD.leaveTo(handle, upload.id().value(), episode);
        }
        handle.execute("delete from upload where episode_id = ?", episode);
        pictures.forget(handle, episode);
    }

    Optional<Upload> find(UploadId id, Presence presence) {
        return SentTable.find(jdbi, SELECT, id.value(), presence, Upload.class);
    }

    List<Upload> of(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where episode_id = :episode and removed_at is null order by created_at, id")
                .bind("episode", episode)
                .mapTo(Upload.class)
                .list());
    }

    /** Bytes of all that somebody has sent. */
    long bytesOf(EducatorId educator) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select coalesce(sum(byte_count), 0) from upload where educator_id = :educator")
                .bind("educator", educator)
                .mapTo(Long.class)
                .one());
    }

    boolean names(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery(
                                "select count(*) from upload where sha256 = :sha256 or heard_sha256 = :sha256")
                        .bind("sha256", sha256)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /** Those that nobody has listened to, oldest first. */
    List<Upload> unheard(int most) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where heard = '' order by created_at, id fetch first :most rows only")
                .bind("most", most)
                .mapTo(Upload.class)
                .list());
    }

    Heard heard(UploadId id) {
        return jdbi.withHandle(handle -> handle.createQuery("select heard from upload where id = :id")
                .bind("id", id)
                .mapTo(Heard.class)
                .findOne()
                .orElseGet(Heard.Waiting::new));
    }

    /** Notes that somebody begins to listen. @return how often somebody has begun by now */
    int beginHearing(UploadId id) {
        return jdbi.inTransaction(handle -> {
            handle.createUpdate("update upload set hearing_tries = hearing_tries + 1 where id = :id")
                    .bind("id", id)
                    .execute();
            return handle.createQuery("select hearing_tries from upload where id = :id")
                    .bind("id", id)
                    .mapTo(Integer.class)
                    .one();
        });
    }

    /** It was not the recording that kept us from listening. */
    void takeBackTry(UploadId id) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "update upload set hearing_tries = hearing_tries - 1 where id = :id and hearing_tries > 0")
                .bind("id", id)
                .execute());
    }

    /** @param sha256 of the file that goes with it; empty for none */
    void keepHeard(UploadId id, Heard heard, Optional<Sha256> sha256) {
        jdbi.useHandle(
                handle -> handle.createUpdate("update upload set heard = :heard, heard_sha256 = :sha256 where id = :id")
                        .bind("heard", heard)
                        .bind("sha256", sha256.map(Sha256::hex).orElse(""))
                        .bind("id", id)
                        .execute());
    }

    /** @return of how many uploads */
    int forgetHeard(Sha256 sha256) {
        return jdbi.withHandle(
                handle -> handle.createUpdate("""
                        update upload set heard = '', heard_sha256 = '', hearing_tries = 0
                        where heard_sha256 = :sha256""").bind("sha256", sha256).execute());
    }
}
