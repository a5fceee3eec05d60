package groundbass.release.care;

import groundbass.catalog.upload.Uploads;
import groundbass.identity.Sha256;
import groundbass.release.FileRole;
import groundbass.release.Releases;
import java.util.List;
import org.jdbi.v3.core.Jdbi;

/** The stored files that rows name: those of releases, uploaded recordings, what was heard in these, and pictures. */
public final class NamedFiles {
    private final Jdbi jdbi;
    private final Releases releases;
    private final Uploads uploads;

    public NamedFiles(Jdbi jdbi, Releases releases, Uploads uploads) {
        this.jdbi = jdbi;
        this.releases = releases;
        this.uploads = uploads;
    }

    /** Whether any row needs this content; for the sweep of stored files. */
    public boolean contain(Sha256 sha256) {
        return uploads.names(sha256) || releases.files().names(sha256);
    }

    /**
     * Some of them, in the order of their digests.
     *
     * @param hex the digest, or the beginning of one, that they follow; empty to begin at the first
     */
    public List<Sha256> after(String hex, int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select sha256 from (select distinct sha256 from release_file
                                where sha256 > :hex and role <> :streamed
                            order by sha256 fetch first :most rows only) of_release
                        union select sha256 from (select distinct sha256 from upload where sha256 > :hex
                            order by sha256 fetch first :most rows only) of_upload
                        union select heard_sha256 from (select distinct heard_sha256 from upload where heard_sha256 > :hex
                            and heard_sha256 <> '' order by heard_sha256 fetch first :most rows only) of_hearing
                        union select sha256 from (select distinct sha256 from picture where sha256 > :hex
                            order by sha256 fetch first :most rows only) of_picture
                        order by 1 fetch first :most rows only""")
                .bind("streamed", FileRole.ZIP)
                .bind("hex", hex)
                .bind("most", most)
                .mapTo(Sha256.class)
                .list());
    }
}
