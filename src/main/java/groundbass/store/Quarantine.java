package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Where files that no row names wait before they are deleted, so that what went by mistake can come back. */
final class Quarantine {
    private final Path folder;

    Quarantine(Path folder) {
        this.folder = folder;
    }

    /** Where a file waits, if it is here. */
    Path place(Sha256 sha256) {
        return folder.resolve(sha256.hex());
    }

    /** Its time of last change says when it came. */
    void take(Path file, Instant now) throws IOException {
        Path target = folder.resolve(file.getFileName());
        Files.move(file, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        Files.setLastModifiedTime(target, FileTime.from(now));
    }

    /** Gives a file back, if it is here. */
    boolean giveBack(Sha256 sha256, Path target, Instant now) throws IOException {
        Path file = place(sha256);
        if (!Files.isRegularFile(file)) {
            return false;
        }
        Files.createDirectories(target.getParent());
        try {
            Files.setLastModifiedTime(file, FileTime.from(now));
            Files.move(file, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (NoSuchFileException e) {
            return Files.isRegularFile(target); // another reader was faster
        }
        return true;
    }

    boolean holds(Sha256 sha256) {
        return Files.isRegularFile(place(sha256));
    }

    /** What came weeks ago. */
    List<Sha256> overdue(Instant now) throws IOException {
        var all = new ArrayList<Sha256>();
        for (Path file : FileWalk.list(folder, "*")) {
            Sha256.parse(file.getFileName().toString())
                    .filter(sha256 -> isOverdue(sha256, now))
                    .ifPresent(all::add);
        }
        return all;
    }

    boolean isOverdue(Sha256 sha256, Instant now) {
        try {
            var came = Files.getLastModifiedTime(place(sha256)).toInstant();
            return came.isBefore(now.minus(SweepPolicy.SET_ASIDE));
        } catch (NoSuchFileException e) {
            return false; // given back meanwhile
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    boolean delete(Sha256 sha256) throws IOException {
        return Files.deleteIfExists(place(sha256));
    }
}
