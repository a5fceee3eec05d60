package groundbass.store;

import groundbass.identity.Sha256;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * {@link Blobs} in one folder: {@code ab/abcdef...} by the first two digits, {@code incoming/} for files that are still
 * being written, {@code unnamed/} for what a sweep took away, {@code damaged/} for what is no longer what its digest says.
 * A file's time of last change says when it was last named. The first reader of a file after a start reads it all, to see
 * whether it is whole.
 */
public final class BlobFolder implements BlobStore {
    private static final Logger log = LoggerFactory.getLogger(BlobFolder.class);
    private static final String INCOMING = "incoming";
    private static final String UNNAMED = "unnamed";
    private static final String DAMAGED = "damaged";
    private static final int MOST_MISSED = 1_000;

    private final Path folder;
    private final Path incoming;
    private final Path damaged;
    private final Quarantine quarantine;
    private final Clock clock;
    private final Verified verified = new Verified();
    private volatile boolean paired;
    private volatile boolean reading;
    private volatile BooleanSupplier alone = () -> true;
    private final Set<Sha256> missed = ConcurrentHashMap.newKeySet();
    // A file that is put again and a sweep that finds it old must not cross.
    private final Object settling = new Object();

    /** Uses {@code folder}, making it where it is missing. */
    public BlobFolder(Path folder, Clock clock) throws IOException {
        this(clock, folder);
        Files.createDirectories(incoming);
        Files.createDirectories(this.folder.resolve(UNNAMED));
    }

    /** What is not there is not made. */
    private BlobFolder(Clock clock, Path folder) {
        this.folder = folder.toAbsolutePath();
        this.incoming = this.folder.resolve(INCOMING);
        this.damaged = this.folder.resolve(DAMAGED);
        this.clock = clock;
        this.quarantine = new Quarantine(this.folder.resolve(UNNAMED));
    }

    /** To read alone: nothing is made where the folder is missing, as where its name was mistyped. */
    public static BlobFolder toRead(Path folder, Clock clock) {
        var blobs = new BlobFolder(clock, folder);
        blobs.onlyRead();
        return blobs;
    }

    @Override
    public Optional<Blob> put(InputStream in, long limit) throws IOException {
        return Blob.kept(temporary(), limit, Blob.upTo(limit, in), this::settle);
    }

    @Override
    public Blob put(Content content) throws IOException {
        return Blob.kept(temporary(), Long.MAX_VALUE, content, this::settle).orElseThrow();
    }

    private Path temporary() throws IOException {
        demandHere();
        return incoming.resolve(RandomId.next());
    }

    /** Gives a fully written file its name; a crash leaves either the whole file or none under that name. */
    private void settle(Path temporary, Blob blob) throws IOException {
        Path target = place(blob.sha256());
        synchronized (settling) {
            demandAlone();
            if (!Files.isDirectory(target.getParent())) {
                Files.createDirectories(target.getParent());
                force(folder);
            }
            touch(temporary, clock.instant());
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            force(target.getParent());
            verified.add(target, blob.sha256());
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
        return place(folder, sha256);
    }

    static Path place(Path folder, Sha256 sha256) {
        return folder.resolve(sha256.hex().substring(0, 2)).resolve(sha256.hex());
    }

    @Override
    public String place() {
        return folder.toString();
    }

    @Override
    public Optional<String> identity() throws IOException {
        try {
            // an empty one was cut short with the machine, and says nothing
            return Optional.of(Files.readString(folder.resolve(IDENTITY), StandardCharsets.UTF_8)
                            .strip())
                    .filter(identity -> !identity.isEmpty());
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    @Override
    public void identify(String identity) throws IOException {
        demandAlone();
        Path written = Files.writeString(incoming.resolve(RandomId.next()), identity + "\n");
        Files.move(written, folder.resolve(IDENTITY), StandardCopyOption.ATOMIC_MOVE);
    }

    @Override
    public void pair() {
        paired = true;
    }

    @Override
    public void guardedBy(BooleanSupplier held) {
        alone = held;
    }

    @Override
    public void onlyRead() {
        reading = true;
    }

    /** @throws FilesAway where an empty place is left of the folder, as of a disk that is not mounted */
    private void demandHere() throws FilesAway {
        if (paired && !Files.isRegularFile(folder.resolve(IDENTITY))) {
            throw new FilesAway(folder);
        }
    }

    /** @throws FilesAway where another server may be writing here */
    private void demandAlone() throws FilesAway {
        if (!alone.getAsBoolean()) {
            throw new FilesAway(
                    folder.toString(),
                    "the database server does not confirm that this is the only server of the site; is it away?");
        }
    }

    @Override
    public void tryWriting() throws IOException {
        demandHere();
        demandAlone();
        Path file = Files.write(temporary(), new byte[] {1});
        Files.delete(file);
    }

    @Override
    public boolean isEmpty() throws IOException {
        var empty = new boolean[] {true};
        FileWalk.blobs(folder, (file, sha256) -> empty[0] = false);
        return empty[0];
    }

    @Override
    public void forEach(Consumer<Sha256> each) throws IOException {
        FileWalk.blobs(folder, (file, sha256) -> {
            each.accept(sha256);
            return true;
        });
    }

    @Override
    public boolean holds(Sha256 sha256) {
        return Files.isRegularFile(place(sha256)) || quarantine.holds(sha256);
    }

    @Override
    public boolean exists(Sha256 sha256) throws IOException {
        try {
            path(sha256);
            return true;
        } catch (NoSuchFileException | DamagedFileException e) {
            return false;
        }
    }

    @Override
    public InputStream open(Sha256 sha256) throws IOException {
        return Files.newInputStream(path(sha256));
    }

    @Override
    public long length(Sha256 sha256) throws IOException {
        return Files.size(path(sha256));
    }

    @Override
    public Opened openAnywhere(Sha256 sha256) throws IOException {
        var channel = FileChannel.open(path(sha256), StandardOpenOption.READ);
        return new Opened() {
            @Override
            public int read(ByteBuffer into, long position) throws IOException {
                return channel.read(into, position);
            }

            @Override
            public void close() throws IOException {
                channel.close();
            }
        };
    }

    @Override
    public Local local(Sha256 sha256) throws IOException {
        Path file = path(sha256);
        return new Local() {
            @Override
            public Path path() {
                return file;
            }

            @Override
            public void close() {}
        };
    }

    @Override
    public Optional<String> placeInFolder(Sha256 sha256) throws IOException {
        Path file = folder.getParent().relativize(path(sha256));
        return Optional.of(file.toString().replace('\\', '/'));
    }

    /** Where it lies; throws as {@link #length}. */
    public Path path(Sha256 sha256) throws IOException {
        try {
            return good(place(sha256), sha256);
        } catch (NoSuchFileException e) {
            return comeBack(sha256);
        }
    }

    private Path good(Path file, Sha256 sha256) throws IOException {
        boolean good = verified.isGood(file, sha256) || mayMove() && !putAside(file, sha256);
        if (!good) {
            throw new DamagedFileException(sha256);
        }
        return file;
    }

    /** A file that a sweep took away comes back when it is asked for; whoever may not move it reads it where it waits. */
    private Path comeBack(Sha256 sha256) throws IOException {
        Path file = place(sha256);
        try {
            if (!mayMove()) {
                return readable(sha256);
            }
            synchronized (settling) {
                quarantine.giveBack(sha256, file, clock.instant());
            }
            return good(file, sha256);
        } catch (NoSuchFileException e) {
            demandHere();
            miss(sha256);
            throw e;
        }
    }

    private Path readable(Sha256 sha256) throws IOException {
        try {
            return good(quarantine.place(sha256), sha256);
        } catch (NoSuchFileException e) {
            return good(place(sha256), sha256); // a server has just given it back
        }
    }

    private boolean mayMove() {
        return !reading && alone.getAsBoolean();
    }

    /**
     * Moves away what was found damaged, unless somebody has put it again meanwhile: to read it took a while.
     *
     * @return whether it was damaged still
     */
    boolean putAside(Path file, Sha256 sha256) throws IOException {
        synchronized (settling) {
            if (verified.isGood(file, sha256)) {
                return false;
            }
            verified.forget(sha256);
            Files.createDirectories(damaged);
            Files.move(
                    file,
                    damaged.resolve(sha256.hex()),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        }
        log.error("the stored file {} is damaged; what is left of it lies in {}", sha256, damaged);
        miss(sha256);
        return true;
    }

    private void miss(Sha256 sha256) {
        if (missed.size() < MOST_MISSED) {
            missed.add(sha256);
        }
    }

    @Override
    public OptionalLong verify(Sha256 sha256) throws IOException {
        verified.forget(sha256);
        try {
            return OptionalLong.of(length(sha256));
        } catch (NoSuchFileException | DamagedFileException e) {
            return OptionalLong.empty();
        }
    }

    @Override
    public Set<Sha256> missed() {
        var taken = Set.copyOf(missed);
        missed.removeAll(taken);
        return taken;
    }

    @Override
    public Swept sweep(Predicate<Sha256> named) throws IOException {
        demandHere();
        demandAlone();
        return new Sweep(folder, incoming, quarantine, verified, this::demandAlone, clock.instant(), settling)
                .run(named);
    }

    private static void touch(Path file, Instant when) throws IOException {
        Files.setLastModifiedTime(file, FileTime.from(when));
    }
}
