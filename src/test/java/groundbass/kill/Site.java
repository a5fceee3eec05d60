package groundbass.kill;

import groundbass.store.BlobFolder;
import groundbass.store.BlobStore;
import groundbass.store.Database;
import groundbass.store.bucket.BlobBucket;
import groundbass.store.bucket.BucketName;
import groundbass.store.bucket.FileTurns;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;

/**
 * A data folder, the database that belongs to it and where its files lie.
 *
 * @param database {@link #EMBEDDED}, or the address of a PostgreSQL
 * @param files {@link #IN_FOLDER}, or a bucket as {@code s3://bucket/prefix}
 */
record Site(Path folder, String database, String files) {
    static final String EMBEDDED = "embedded";
    static final String IN_FOLDER = "folder";

    /** A site on a folder alone. */
    static Site in(Path folder) {
        return new Site(folder, EMBEDDED, IN_FOLDER);
    }

    boolean isEmbedded() {
        return database.equals(EMBEDDED);
    }

    Database open() {
        return isEmbedded() ? Database.embedded(folder) : Database.open(database, "postgres", "");
    }

    /** Its files, for a process that has opened the database. */
    BlobStore blobs(Database open) {
        try {
            return files.equals(IN_FOLDER)
                    ? new BlobFolder(folder.resolve("files"), Clock.systemUTC())
                    : BlobBucket.open(
                            BucketName.parse(files).orElseThrow(),
                            new FileTurns(open.jdbi(), !isEmbedded()),
                            Clock.systemUTC());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
