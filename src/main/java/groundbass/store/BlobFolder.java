package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.security.DigestOutputStream;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * {@link Blobs} in one folder: {@code ab/abcdef...} by the first two digits, and {@code incoming/} for files that are
 * still being written. A file's time of last change says when it was last named.
 */
public final class BlobFolder implements Blobs {
    private static final Duration KEPT_UNNAMED = Duration.ofDays(1);
    private static final String INCOMING = "incoming";
    private static final int BUFFER = 1 << 16;

    private final Path folder;
    private final Path incoming;
    private final Clock clock;
    // A file that is put again and a sweep that finds it old must not cross.
    private final Object settling = new Object();

    /** Uses {@code folder}, making it where it is missing. */
    public BlobFolder(Path folder, Clock clock) throws IOException {
        this.folder = folder.toAbsolutePath();
        this.incoming = this.folder.resolve(INCOMING);
        this.clock = clock;
        Files.createDirectories(incoming);
    }

    @Override
    public Optional<Blob> put(InputStream in, long limit) throws IOException {
        Path temporary = temporary();
        try {
            var blob = write(temporary, out -> copy(in, out, limit));
            if (blob.length() > limit) {
                return Optional.empty();
            }
            settle(temporary, blob.sha256());
            return Optional.of(blob);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    @Override
    public Blob put(Content content) throws IOException {
        Path temporary = temporary();
        try {
            var blob = write(temporary, content);
            settle(temporary, blob.sha256());
            return blob;
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** Copies until the end, or until one byte more than the limit has been seen. */
    private static void copy(InputStream in, OutputStream out, long limit) throws IOException {
        byte[] buffer = new byte[BUFFER];
        long left = limit;
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            out.write(buffer, 0, (int) Math.min(n, left + 1));
            left -= n;
            if (left < 0) {
                return;
            }
        }
    }

    private Path temporary() {
        return incoming.resolve(RandomId.next());
    }

    private static Blob write(Path file, Content content) throws IOException {
        var digest = Sha256.digest();
        try (var channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            var out = new DigestOutputStream(Channels.newOutputStream(channel), digest);
            content.writeTo(out);
            out.flush();
            channel.force(true);
            return new Blob(Sha256.finish(digest), channel.size());
        }
    }

    /** Gives a fully written file its name; a crash leaves either the whole file or none under that name. */
    private void settle(Path temporary, Sha256 sha256) throws IOException {
        Path target = place(sha256);
        synchronized (settling) {
            if (!Files.isDirectory(target.getParent())) {
                Files.createDirectories(target.getParent());
                force(folder);
            }
            touch(temporary, clock.instant());
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            force(target.getParent());
        }
    }

    /** A rename is only safe on the disk once its folder is. Systems that cannot open a folder look after that alone. */
    private static void force(Path directory) throws IOException {
        if (directory.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            try (var channel = FileChannel.open(directory, StandardOpenOption.READ)) {
                channel.force(true);
            }
        }
    }

    private Path place(Sha256 sha256) {
        return folder.resolve(sha256.hex().substring(0, 2)).resolve(sha256.hex());
    }

    @Override
    public boolean exists(Sha256 sha256) {
        return Files.isRegularFile(place(sha256));
    }

    @Override
    public InputStream open(Sha256 sha256) throws IOException {
        return Files.newInputStream(place(sha256));
    }

    @Override
    public Path path(Sha256 sha256) throws IOException {
        Path path = place(sha256);
        if (!Files.isRegularFile(path)) {
            throw new NoSuchFileException(sha256.hex());
        }
        return path;
    }

    @Override
    public int sweep(Predicate<Sha256> named) throws IOException {
        var sweeper = new Sweeper(named);
        Files.walkFileTree(folder, Set.of(), 2, sweeper);
        return sweeper.deleted;
    }

    private final class Sweeper extends SimpleFileVisitor<Path> {
        private final Predicate<Sha256> named;
        private int deleted;

        Sweeper(Predicate<Sha256> named) {
            this.named = named;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
            deleted += attributes.isRegularFile() && sweepOne(file, named) ? 1 : 0;
            return FileVisitResult.CONTINUE;
        }

        /** An incoming file may get its name while the walk goes on. */
        @Override
        public FileVisitResult visitFileFailed(Path file, IOException why) throws IOException {
            if (why instanceof NoSuchFileException) {
                return FileVisitResult.CONTINUE;
            }
            throw why;
        }
    }

    private boolean sweepOne(Path file, Predicate<Sha256> named) throws IOException {
        Optional<Sha256> sha256 = Sha256.parse(file.getFileName().toString());
        boolean left = file.getParent().equals(incoming);
        if (sha256.isEmpty() && !left) {
            return false; // not ours
        }
        boolean wanted = sha256.filter(named).isPresent();
        synchronized (settling) {
            return wanted ? keep(file) : deleteIfOld(file);
        }
    }

    private boolean keep(Path file) throws IOException {
        touch(file, clock.instant());
        return false;
    }

    private boolean deleteIfOld(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return false; // an incoming file that has just got its name
        }
        var lastNamed = Files.getLastModifiedTime(file).toInstant();
        boolean old = lastNamed.isBefore(clock.instant().minus(KEPT_UNNAMED));
        return old && Files.deleteIfExists(file);
    }

    private static void touch(Path file, Instant when) throws IOException {
        Files.setLastModifiedTime(file, FileTime.from(when));
    }
}
