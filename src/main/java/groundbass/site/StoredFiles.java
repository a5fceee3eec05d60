package groundbass.site;

import groundbass.release.care.NamedFiles;
import groundbass.store.BlobStore;
import groundbass.store.CannotOpen;
import groundbass.store.Database;
import groundbass.store.Pairing;
import groundbass.store.Swept;
import groundbass.store.fault.FolderFault;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the site does about its folder of files as a whole: sees that it is the right one, and sweeps it. */
final class StoredFiles {
    private static final Logger log = LoggerFactory.getLogger(StoredFiles.class);
    private static final int SAMPLE = 1_000;

    private final BlobStore blobs;
    private final NamedFiles named;

    public StoredFiles(BlobStore blobs, NamedFiles named) {
        this.blobs = blobs;
        this.named = named;
    }

    /** @throws CannotOpen where the folder belongs to another database */
    public void pairWith(Jdbi jdbi) {
        try {
            new Pairing(jdbi, blobs).check(named.after("", SAMPLE));
        } catch (IOException e) {
            throw new FolderFault("cannot use the folder of files", e);
        }
    }

    /** The same for whoever only reads them, beside a server. @throws CannotOpen where the folder belongs to another database */
    static void compare(Stored stored, Jdbi jdbi) throws IOException {
        new Pairing(jdbi, stored.blobs()).compare(stored.named().after("", SAMPLE));
    }

    /** @throws CannotOpen where the files' place or the database cannot be written */
    public void demandWritable(Database database) {
        try {
            blobs.tryWriting();
            database.tryWriting();
        } catch (IOException | JdbiException e) {
            throw new CannotOpen(
                    "The data folder or the database cannot be written (" + reason(e)
                            + "). See that the disk is not full"
                            + " and not mounted read-only, and that this user may write there. Where files lie in an"
                            + " object store, see that it runs, and check --files and the AWS variables.",
                    e);
        }
    }

    private static String reason(Throwable e) {
        var root = e;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return String.valueOf(root.getMessage()).lines().findFirst().orElse("");
    }

    public void sweep() {
        try {
            tell(blobs.sweep(named::contain));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void tell(Swept swept) {
        if (swept.heldBack() > 0) {
            log.warn(
                    "{} stored files are named by no row of the database; that is too many to be right, so they stay"
                            + " where they are. Is this the database that belongs to them?",
                    swept.heldBack());
        } else if (!swept.isIdle()) {
            log.info(
                    "swept the stored files: {} without a name set aside for a month, {} deleted that had been so",
                    swept.setAside(),
                    swept.deleted());
        }
    }
}
