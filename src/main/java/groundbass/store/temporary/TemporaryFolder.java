package groundbass.store.temporary;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A process's folder for what it needs for a while. A lock of the system on a file in it ends with the process, however that
 * ends: a folder whose file nobody has locked was left behind.
 */
final class TemporaryFolder {
    private static final Logger log = LoggerFactory.getLogger(TemporaryFolder.class);
    private static final String BEFORE = "groundbass-";
    private static final String HELD = "held";
    /** Between its making and its lock a folder looks as if it was left. */
    private static final Duration NEW = Duration.ofMinutes(1);

    private final Path path;
    /** Held on to for as long as this is: a file that nothing refers to is closed with the rubbish. */
    private final FileLock lock;

    private TemporaryFolder(Path path, FileLock lock) {
        this.path = path;
        this.lock = lock;
    }

    /** A new one for this process, which has one at a time: to look at its own lock a second time would end it. */
    static TemporaryFolder in(Path parent) throws IOException {
        Path path = Files.createTempDirectory(parent, BEFORE);
        var held = path.resolve(HELD);
        var lock = FileChannel.open(held, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)
                .lock();
        clear(parent, Files.getLastModifiedTime(held).toInstant().minus(NEW), path);
        return new TemporaryFolder(path, lock);
    }

    /** The same, or a new one where there is none yet or somebody who tidies up the machine has taken it away. */
    static TemporaryFolder standing(TemporaryFolder before, Path parent) throws IOException {
        return before != null && Files.isDirectory(before.path) ? before : in(parent);
    }

    Path path() {
        return path;
    }

    boolean isHeld() {
        return lock.isValid();
    }

    /** How old a folder is, the disk itself says: it dates a new file. */
    private static void clear(Path parent, Instant before, Path own) throws IOException {
        var others = new ArrayList<Path>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(parent, BEFORE + "*")) {
            all.forEach(others::add);
        }
        others.remove(own);
        for (Path folder : others) {
            try {
                if (wasLeft(folder.resolve(HELD), before)) {
                    delete(folder);
                    log.info("what a process that was killed has left is cleared: {}", folder);
                }
            } catch (IOException | UncheckedIOException e) {
                log.debug("left lying, as it may be another user's: {}", folder, e);
            }
        }
    }

    private static boolean wasLeft(Path held, Instant before) throws IOException {
        if (!Files.isRegularFile(held, LinkOption.NOFOLLOW_LINKS)
                || !Files.getLastModifiedTime(held).toInstant().isBefore(before)) {
            return false; // none of ours, or one that is just being made
        }
        try (var file = FileChannel.open(held, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                var lock = file.tryLock()) {
            return lock != null;
        }
    }

    /** What tells whose it is goes last, so that what could not be deleted is found again. */
    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder())
                    .filter(file -> !file.equals(folder) && !file.equals(folder.resolve(HELD)))
                    .toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder.resolve(HELD));
        Files.delete(folder);
    }
}
