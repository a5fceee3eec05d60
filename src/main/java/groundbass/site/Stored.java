package groundbass.site;

import groundbass.backup.Backup;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.upload.UploadRepository;
import groundbass.catalog.upload.Uploads;
import groundbass.release.Releases;
import groundbass.release.care.NamedFiles;
import groundbass.store.BlobFolder;
import groundbass.store.Database;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;

/** The stored files of a site, and the rows that name them: what a whole site and a backup of it both work with. */
record Stored(
        BlobFolder blobs,
        Episodes episodes,
        UploadRepository uploadRows,
        Uploads uploads,
        Releases releases,
        NamedFiles named,
        Backup backup) {
    /** @param data the site's folder */
    static Stored over(Database database, Accounts accounts, Path data, Clock clock) {
        var jdbi = database.jdbi();
        var blobs = blobs(data, clock);
        var episodes = new Episodes(jdbi);
        var uploadRows = new UploadRepository(jdbi);
        var uploads = new Uploads(jdbi, uploadRows, episodes, blobs, accounts.audit(), clock);
        var releases = new Releases(jdbi);
        var named = new NamedFiles(jdbi, releases, uploads);
        return new Stored(
                blobs, episodes, uploadRows, uploads, releases, named, new Backup(database, blobs, named, clock));
    }

    private static BlobFolder blobs(Path data, Clock clock) {
        try {
            return new BlobFolder(data.resolve("files"), clock);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot use the folder " + data, e);
        }
    }
}
