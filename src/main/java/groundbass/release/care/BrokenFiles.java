package groundbass.release.care;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.identity.Sha256;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Jdbi;

/** The rows of stored files that are damaged or missing. */
public final class BrokenFiles {
    private final Jdbi jdbi;

    /**
     * Where a lesson lacks something.
     *
     * @param title of the episode
     * @param file the name of the file in its release, or of the recording or picture as it was sent
     * @param lost whether it cannot be made again
     */
    public record BrokenFile(EpisodeId episode, String title, String file, boolean lost) {}

    public BrokenFiles(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Those of lessons in which an educator writes, each name once. */
    public List<BrokenFile> of(EducatorId who) {
        return jdbi.withHandle(
                handle -> handle.createQuery("""
                        select distinct episode.id as episode, episode.title, named.name as file, broken_file.lost
                        from broken_file
                        join (select release_file.sha256, release.episode_id, release_file.name
                                from release_file join release on release.id = release_file.release_id
                              union select upload.sha256, upload.episode_id, upload.original_name from upload
                              union select picture.sha256, picture.episode_id, picture.original_name from picture) named
                            on named.sha256 = broken_file.sha256
                        join episode on episode.id = named.episode_id
                        where episode.series_id in\s""" + Deed.WRITE.series() + "order by episode.title, named.name")
                        .bind("who", who)
                        .mapTo(BrokenFile.class)
                        .list());
    }

    void note(Sha256 sha256, Instant now) {
        if (isKnown(sha256)) {
            return;
        }
        jdbi.useHandle(handle -> handle.createUpdate(
                        "insert into broken_file (sha256, found_at, lost) values (:sha256, :now, false)")
                .bind("sha256", sha256)
                .bind("now", now)
                .execute());
    }

    private boolean isKnown(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery("select lost from broken_file where sha256 = :sha256")
                .bind("sha256", sha256)
                .mapTo(Boolean.class)
                .findOne()
                .isPresent());
    }

    /** Those that nobody has given up, oldest first. */
    List<Sha256> toMend(int most) {
        return list(
                "select sha256 from broken_file where not lost order by found_at, sha256 fetch first :most rows only",
                most);
    }

    List<Sha256> lost(int most) {
        return list(
                "select sha256 from broken_file where lost order by found_at, sha256 fetch first :most rows only",
                most);
    }

    private List<Sha256> list(String sql, int most) {
        return jdbi.withHandle(handle ->
                handle.createQuery(sql).bind("most", most).mapTo(Sha256.class).list());
    }

    void giveUp(Sha256 sha256) {
        change("update broken_file set lost = true where sha256 = :sha256", sha256);
    }

    void remove(Sha256 sha256) {
        change("delete from broken_file where sha256 = :sha256", sha256);
    }

    private void change(String sql, Sha256 sha256) {
        jdbi.useHandle(handle -> handle.createUpdate(sql).bind("sha256", sha256).execute());
    }
}
