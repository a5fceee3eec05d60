package groundbass.site;

import groundbass.backup.BackupFile;
import groundbass.backup.BackupManifest;
import groundbass.backup.Restore;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.store.CannotOpen;
import groundbass.store.Database;
import groundbass.store.bucket.BlobBucket;
import groundbass.store.bucket.BucketName;
import groundbass.store.node.FolderLock;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;

/** Whole sites into files and back, for an operator: without pages, without jobs. */
public final class Backups {
    private Backups() {}

    /**
     * Writes a backup of an open database and the files of its site. The file has its name only once it is whole, and
     * only its owner may read it where the system knows owners.
     *
     * @throws FileAlreadyExistsException where there is such a file
     */
    public static BackupManifest make(Database database, Config config, Path file, Clock clock) throws IOException {
        var stored = Stored.toRead(database, Accounts.over(database.jdbi(), clock), config, clock);
        StoredFiles.compare(stored, database.jdbi());
        return PrivateFile.write(file, out -> stored.backup().writeTo(out));
    }

    /**
     * Makes a new site of a backup. Letters that waited to be written or sent are given up, since the old site may have
     * sent them; the desk shows those that were written. Who was told that their account ends is told anew.
     *
     * @param config a data folder that is empty or not there, and a database without tables
     * @throws groundbass.backup.NotRestorable where the file is damaged; nothing has been made then
     * @throws CannotOpen where folder, bucket or database hold something already, or a server is at work there
     */
    public static void restore(BackupFile backup, Config config, Clock clock) throws IOException {
        backup.verify();
        refuseUnlessEmpty(config); // before a lock is laid into a folder that is another's
        try (var alone = SiteLock.takeAlone(config, clock)) {
            refuseUnlessEmpty(config);
            alone.demandHeld();
            restoreAlone(backup, config, alone, clock);
        }
    }

    private static void refuseUnlessEmpty(Config config) throws IOException {
        refuseUnlessEmpty(config.data());
        if (config.files().isPresent()) {
            refuseUnlessEmpty(config.files().get());
        }
    }

    private static void restoreAlone(BackupFile backup, Config config, SiteLock alone, Clock clock) throws IOException {
        String migration = backup.manifest().migration();
        try (var database = config.database()
                .map(server -> Database.create(
                        server.url(), server.user(), server.password().value(), migration))
                .orElseGet(() -> Database.newEmbedded(config.data(), migration))) {
            var blobs = Stored.over(database, Accounts.over(database.jdbi(), clock), config, clock)
                    .blobs();
            blobs.guardedBy(alone::isHeld);
            new Restore(backup).into(database, blobs);
        }
        try (var database = config.openDatabase()) {
            var accounts = Accounts.over(database.jdbi(), clock);
            int givenUp = accounts.outbox().giveUpWaiting("restored from a backup")
                    + accounts.newsQueue().giveUpWaiting();
            // whoever came back after the backup was made is not known to have
            accounts.idleStudents().takeBack();
            String told = "made " + backup.manifest().made() + ", letters given up: " + givenUp;
            accounts.audit().note(Audit.OPERATOR, AuditWord.BACKUP_RESTORED, told);
        }
    }

    private static void refuseUnlessEmpty(BucketName bucket) throws IOException {
        if (!BlobBucket.isUnused(bucket)) {
            throw new CannotOpen(
                    "There are files in " + bucket + " already. A backup is restored into a new place, so that"
                            + " nothing that lies there is lost: name another with --files.");
        }
    }

    private static void refuseUnlessEmpty(Path data) throws IOException {
        if (Files.isDirectory(data)) {
            try (var inside = Files.list(data)) {
                if (inside.anyMatch(file -> !FolderLock.leaves(file))) {
                    throw new CannotOpen("The folder " + data + " is not empty. A backup is restored into a new one, so"
                            + " that nothing that stands there is lost: name another with --data.");
                }
            }
        }
    }
}
