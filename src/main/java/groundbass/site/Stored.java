package groundbass.site;

import groundbass.backup.Backup;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.upload.UploadRepository;
import groundbass.catalog.upload.Uploads;
import groundbass.release.Releases;
import groundbass.release.care.NamedFiles;
import groundbass.store.BlobFolder;
import groundbass.store.BlobStore;
import groundbass.store.CannotOpen;
import groundbass.store.Database;
import groundbass.store.bucket.BlobBucket;
import groundbass.store.bucket.FileTurns;
import groundbass.store.fault.FilesAway;
import groundbass.store.fault.FolderFault;
import groundbass.store.temporary.TemporaryFiles;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;

/** The stored files of a site, and the rows that name them: what a whole site and a backup of it both work with. */
record Stored(
        BlobStore blobs,
        Episodes episodes,
        UploadRepository uploadRows,
        Uploads uploads,
        Releases releases,
        NamedFiles named,
        Backup backup) {
    static Stored over(Database database, Accounts accounts, Config config, Clock clock) {
        return over(database, accounts, blobs(database, config, clock), clock);
    }

    /** For whoever only reads, beside a server: nothing is made, moved or taken away. */
    static Stored toRead(Database database, Accounts accounts, Config config, Clock clock) {
        var blobs =
                config.files().isPresent() ? blobs(database, config, clock) : BlobFolder.toRead(folder(config), clock);
        blobs.onlyRead();
        return over(database, accounts, blobs, clock);
    }

    private static Path folder(Config config) {
        return config.data().resolve("files");
    }

    /** A folder for what passes with this process: with the site's own, which is held for one process alone, where it has one. */
    static Path passing(Config config) {
        try {
            return config.usesFolder() ? config.data().resolve("passing") : TemporaryFiles.folder();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Stored over(Database database, Accounts accounts, BlobStore blobs, Clock clock) {
        var jdbi = database.jdbi();
        var episodes = new Episodes(jdbi);
        var uploadRows = new UploadRepository(jdbi);
        var uploads = new Uploads(jdbi, uploadRows, episodes, blobs, accounts.audit(), clock);
        var releases = new Releases(jdbi);
        var named = new NamedFiles(jdbi, releases, uploads);
        return new Stored(
                blobs, episodes, uploadRows, uploads, releases, named, new Backup(database, blobs, named, clock));
    }

    private static BlobStore blobs(Database database, Config config, Clock clock) {
        try {
            return config.files().isPresent()
                    ? BlobBucket.open(config.files().get(), new FileTurns(database.jdbi(), config.isOnServer()), clock)
                    : new BlobFolder(folder(config), clock);
        } catch (FilesAway e) {
            throw new CannotOpen("The object store cannot be used: " + e.getReason(), e);
        } catch (IOException e) {
            throw new FolderFault("cannot use the folder " + config.data(), e);
        }
    }
}
