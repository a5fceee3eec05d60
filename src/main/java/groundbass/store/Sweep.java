package groundbass.store;

import groundbass.identity.Sha256;
import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * One sweep of a {@link BlobFolder}: first it looks at everything, then it takes away what no row has named for a day.
 * Where that is most of the files, rows rather than files are what is missing, and nothing is taken.
 */
final class Sweep {
    private final Path folder;
    private final Path incoming;
    private final Quarantine quarantine;
    private final Verified verified;
    private final Guard guard;
    private final Instant now;
    // a file that is put again and a sweep that finds it old must not cross
    private final Object settling;
    private final List<Path> unnamed = new ArrayList<>();
    private int seen;

    /** Asked before each file that is moved or deleted, for a sweep takes a while. */
    @FunctionalInterface
    interface Guard {
        /** @throws FilesAway where another process may be writing here */
        void demandAlone() throws FilesAway;
    }

    Sweep(
            Path folder,
            Path incoming,
            Quarantine quarantine,
            Verified verified,
            Guard guard,
            Instant now,
            Object settling) {
        this.folder = folder;
        this.incoming = incoming;
        this.quarantine = quarantine;
        this.verified = verified;
        this.guard = guard;
        this.now = now;
        this.settling = settling;
    }

    Swept run(Predicate<Sha256> named) throws IOException {
        FileWalk.blobs(folder, (file, sha256) -> look(file, sha256, named.test(sha256)));
        int deleted = clearIncoming() + emptyQuarantine(named);
        if (SweepPolicy.isTooMany(unnamed.size(), seen)) {
            return new Swept(0, deleted, unnamed.size());
        }
        int setAside = 0;
        for (Path file : SweepPolicy.atOnce(unnamed)) {
            setAside += setAside(file, named) ? 1 : 0;
        }
        return new Swept(setAside, deleted, 0);
    }

    private boolean look(Path file, Sha256 sha256, boolean wanted) throws IOException {
        seen++;
        synchronized (settling) {
            if (wanted) {
                touch(file, sha256);
            } else if (isOld(file)) {
                unnamed.add(file);
            }
        }
        return true;
    }

    private boolean setAside(Path file, Predicate<Sha256> named) throws IOException {
        synchronized (settling) {
            if (!isOld(file) || named.test(new Sha256(file.getFileName().toString()))) {
                return false; // put again or named meanwhile: the look through many files takes a while
            }
            guard.demandAlone();
            quarantine.take(file, now);
            return true;
        }
    }

    /** What a row has come to name since it was set aside is given back instead. */
    private int emptyQuarantine(Predicate<Sha256> named) throws IOException {
        int deleted = 0;
        for (var sha256 : quarantine.overdue(now)) {
            synchronized (settling) {
                guard.demandAlone();
                if (named.test(sha256)) {
                    quarantine.giveBack(sha256, BlobFolder.place(folder, sha256), now);
                } else if (quarantine.isOverdue(sha256, now)) {
                    deleted += quarantine.delete(sha256) ? 1 : 0;
                }
            }
        }
        return deleted;
    }

    /** What a crash left half written is of no use to anybody. */
    private int clearIncoming() throws IOException {
        int deleted = 0;
        for (Path file : FileWalk.list(incoming, "*")) {
            if (isOld(file)) {
                guard.demandAlone();
                deleted += Files.deleteIfExists(file) ? 1 : 0;
            }
        }
        return deleted;
    }

    private boolean isOld(Path file) throws IOException {
        try {
            return Files.getLastModifiedTime(file).toInstant().isBefore(now.minus(SweepPolicy.YOUNG));
        } catch (NoSuchFileException e) {
            return false; // an incoming file that has just got its name
        }
    }

    private void touch(Path file, Sha256 sha256) throws IOException {
        try {
            verified.touch(file, sha256, now);
        } catch (NoSuchFileException e) {
            return; // found damaged meanwhile, and put aside
        }
    }
}
