package groundbass.store.node;

import groundbass.store.CannotOpen;
import groundbass.store.fault.FolderFault;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.Set;

/**
 * One process at a time works on a folder. The operating system holds the lock for as long as the process lives, and frees
 * it however the process ends; it can neither go stale nor be lost. On a network file system it is worth what that
 * promises.
 */
public final class FolderLock implements AutoCloseable {
    static final String LOCK = "serving.lock";

    /** Beside the lock, since a process that closed the locked file would lose its lock. */
    static final String HOLDER = "serving.txt";

    private final Path folder;
    private final FileChannel channel;

    private FolderLock(Path folder, FileChannel channel) {
        this.folder = folder;
        this.channel = channel;
    }

    /**
     * @param folder which is there
     * @throws CannotOpen where another process has it; the message says which, since when, and what to do
     */
    public static FolderLock take(Path folder, Instant now) {
        try {
            var channel = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (lock(channel).isEmpty()) {
                channel.close();
                throw new CannotOpen(inUse(folder));
            }
            var held = new FolderLock(folder, channel);
            held.sign(now);
            return held;
        } catch (IOException e) {
            throw new FolderFault("cannot use the folder " + folder, e);
        }
    }

    /** Whether this file is no content of a folder but what a lock leaves there. */
    public static boolean leaves(Path file) {
        return Set.of(LOCK, HOLDER).contains(file.getFileName().toString());
    }

    private static Optional<FileLock> lock(FileChannel channel) throws IOException {
        try {
            return Optional.ofNullable(channel.tryLock());
        } catch (OverlappingFileLockException e) {
            return Optional.empty(); // this process has it already
        }
    }

    private void sign(Instant now) throws IOException {
        Files.writeString(
                folder.resolve(HOLDER), Place.ofThisProcess() + ", since " + now.truncatedTo(ChronoUnit.SECONDS));
    }

    private static String inUse(Path folder) {
        return "The folder " + folder + " is in use by another server" + holder(folder) + ". Stop that one, or choose"
                + " another folder with --data. Several servers of one site need a PostgreSQL server and an object"
                + " store (--database-url, --files).";
    }

    private static String holder(Path folder) {
        try {
            return " (" + Files.readString(folder.resolve(HOLDER)).strip() + ")";
        } catch (IOException e) {
            return "";
        }
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(folder.resolve(HOLDER));
        channel.close();
    }
}
