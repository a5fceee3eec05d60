package groundbass.catalog.upload;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.upload.SentTable.Presence;
import groundbass.document.PictureId;
import groundbass.identity.Sha256;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Pictures as rows. */
final class PictureRows {
    private static final String SELECT = """
            select id, educator_id, episode_id as episode, original_name, words, format, wide, high,
                   byte_count as length, sha256, created_at
            from picture\s""";

    private final Jdbi jdbi;

    PictureRows(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    void insert(Handle handle, Picture picture) {
        handle.createUpdate("""
                        insert into picture (id, educator_id, episode_id, original_name, words, format, wide, high,
                                             byte_count, sha256, created_at)
                        values (:id, :by, :episode, :originalName, :words, :format, :wide, :high, :length, :sha256,
                                :createdAt)""")
                .bindMethods(picture)
                .bindMethods(picture.blob())
                .execute();
    }

    Optional<Picture> find(PictureId id, Presence presence) {
        return SentTable.find(jdbi, SELECT, id.value(), presence, Picture.class);
    }

    List<Picture> of(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where episode_id = :episode and removed_at is null order by created_at, id")
                .bind("episode", episode)
                .mapTo(Picture.class)
                .list());
    }

    boolean names(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from picture where sha256 = :sha256")
                        .bind("sha256", sha256)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /**
     * Forgets what was sent for a draft that is deleted. What the notes of another lesson show, such as a duplicate's,
     * is that lesson's from now on.
     */
    void forget(Handle handle, EpisodeId episode) {
        for (var picture : of(episode)) {
            SentTable.PICTURE.leaveTo(handle, picture.id().value(), episode);
        }
        handle.execute("delete from picture where episode_id = ?", episode);
    }
}
