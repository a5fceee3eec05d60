package groundbass.store;

import java.nio.file.Files;
import java.nio.file.Path;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.MVStoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds the last commit in the file of an embedded database whose process was killed.
 *
 * <p>With a write delay of 0 H2 writes each commit into its file, as one chunk, before the commit returns. Where a chunk
 * fills a gap inside the file, the file's header shall then name it. H2 2.5.252 writes that header too early: it names
 * the chunk before ({@code RandomAccessStore.writeChunk} writes the header, and only its caller {@code
 * FileStore.storeBuffer} takes note of the new chunk). Whoever opens such a file looks from the header on and at the
 * end of the file, and may miss up to twenty commits. They are all there: H2's own search through the whole file
 * ("recovery mode") finds the newest chunk, and closing the file then writes a header that names it.
 */
final class LastCommit {
    private static final Logger log = LoggerFactory.getLogger(LastCommit.class);

    /** What H2 writes into the header of a file that was closed, and takes out before the next commit returns. */
    private static final String CLOSED = "clean";

    private LastCommit() {}

    /**
     * To be called before a database file is opened. A file that is missing, was closed or is in use stays as it is;
     * so does one that cannot be read, since H2 says best what is wrong with it.
     */
    static void find(Path file) {
        if (!Files.exists(file)) {
            return;
        }
        try {
            if (!wasClosed(file)) {
                open(file).recoveryMode().open().close();
                log.info(
                        "The database was not closed when the program ended; its last commit was looked for and found");
            }
        } catch (MVStoreException unreadable) {
            log.debug("{} is left to the database", file, unreadable);
        }
    }

    private static boolean wasClosed(Path file) {
        try (MVStore store = open(file).readOnly().open()) {
            return store.getStoreHeader().containsKey(CLOSED);
        }
    }

    private static MVStore.Builder open(Path file) {
        return new MVStore.Builder().fileName(file.toString()).autoCommitDisabled();
    }
}
