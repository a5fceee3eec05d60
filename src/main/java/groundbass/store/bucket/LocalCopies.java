package groundbass.store.bucket;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Files of this machine that hold something on its way into a bucket or out of it, for this user alone where the system
 * knows users. Whoever made one deletes it; what a process that was killed has left is cleared a day later.
 */
final class LocalCopies {
    private static final Logger log = LoggerFactory.getLogger(LocalCopies.class);
    private static final String BEFORE = "groundbass-";
    private static final String AFTER = ".part";
    private static final Duration LEFT = Duration.ofDays(1);

    private LocalCopies() {}

    static Path make() throws IOException {
        return Files.createTempFile(BEFORE, AFTER);
    }

    /** How old a file is, the disk itself says: it dates a new one. */
    static void clear() throws IOException {
        Path fresh = make();
        var before = changed(fresh).toInstant().minus(LEFT);
        Files.delete(fresh);
        var all = new ArrayList<Path>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(fresh.getParent(), BEFORE + "*" + AFTER)) {
            stream.forEach(all::add);
        }
        for (Path file : all) {
            clear(file, before);
        }
    }

    private static void clear(Path file, Instant before) {
        try {
            if (changed(file).toInstant().isBefore(before)) {
                Files.delete(file);
            }
        } catch (NoSuchFileException e) {
            return; // its maker has deleted it
        } catch (IOException e) {
            log.debug("left lying, as it may be another user's: {}", file, e);
        }
    }

    private static FileTime changed(Path file) throws IOException {
        return Files.getLastModifiedTime(file);
    }
}
