package groundbass.catalog.upload;

import groundbass.catalog.episode.EpisodeId;
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

    Optional<Picture> find(PictureId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(Picture.class)
                .findOne());
    }

    List<Picture> of(EpisodeId episode) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where episode_id = :episode order by created_at, id")
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
            handOn(handle, picture.id(), episode);
        }
        handle.execute("delete from picture where episode_id = ?", episode);
    }

    /** An id is 16 random characters, so a document that has them names it. */
    private static void handOn(Handle handle, PictureId picture, EpisodeId from) {
        handle.createUpdate("""
                        update picture set episode_id = (
                          select min(other.episode_id) from (
                            select episode_id from draft where document like :named
                            union all select episode_id from revision where document like :named) other
                          where other.episode_id <> :from)
                        where id = :picture and exists (
                          select 1 from (
                            select episode_id from draft where document like :named
                            union all select episode_id from revision where document like :named) other
                          where other.episode_id <> :from)""")
                .bind("named", "%picture:" + picture.value() + "%")
                .bind("from", from)
                .bind("picture", picture)
                .execute();
    }
}
