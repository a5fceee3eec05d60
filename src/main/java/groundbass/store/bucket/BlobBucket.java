package groundbass.store.bucket;

import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.BlobStore;
import groundbass.store.Swept;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import groundbass.store.temporary.TemporaryFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.time.Clock;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import software.amazon.awssdk.services.s3.model.HeadObjectResponse;

/**
 * Stored files in a bucket, for any number of servers at once: {@code files/ab/abcdef...} as in a folder,
 * {@code unnamed/} marks of files that no row names, {@code damaged/} what is no longer what its digest says. A file is
 * written into a temporary file of this machine first, so that its digest is known; the store checks the digest as it
 * takes the file, and a file is there whole or not at all.
 *
 * <p>Before a reader has the first byte, the store is asked whether it has the file, at most once in a while for each file,
 * and where it knows a digest of the whole file that is compared. {@link #verify} reads the bytes.
 */
public final class BlobBucket implements BlobStore {
    static final String FILES = "files/";
    static final String UNNAMED = "unnamed/";
    private static final String DAMAGED = "damaged/";
    private static final String PROBE = "probe";
    private static final Logger log = LoggerFactory.getLogger(BlobBucket.class);
    private static final int MOST_MISSED = 1_000;
    private static final int MOST_LOOKS = 3;

    private final Bucket bucket;
    private final FileTurns turns;
    private final Clock clock;
    private final Lengths lengths = new Lengths();
    private final Set<Sha256> missed = ConcurrentHashMap.newKeySet();
    private volatile boolean paired;
    private volatile boolean reading;
    private volatile BooleanSupplier held = () -> true;

    private BlobBucket(Bucket bucket, FileTurns turns, Clock clock) {
        this.bucket = bucket;
        this.turns = turns;
        this.clock = clock;
    }

    /** @throws FilesAway where it is not said who we are, or in which region */
    public static BlobBucket open(BucketName name, FileTurns turns, Clock clock) throws FilesAway {
        return new BlobBucket(Bucket.open(name), turns, clock);
    }

    /** Whether nothing lies there. */
    public static boolean isUnused(BucketName name) throws IOException {
        try (var bucket = Bucket.open(name)) {
            return bucket.isEmpty("");
        }
    }

    static String key(Sha256 sha256) {
        return FILES + sha256.hex().substring(0, 2) + "/" + sha256.hex();
    }

    // --- in

    @Override
    public Optional<Blob> put(InputStream in, long limit) throws IOException {
        return Blob.kept(TemporaryFiles.file(), limit, Blob.upTo(limit, in), this::send);
    }

    @Override
    public Blob put(Content content) throws IOException {
        return Blob.kept(TemporaryFiles.file(), Long.MAX_VALUE, content, this::send)
                .orElseThrow();
    }

    /** Sends it also where it is there: it is young again then. */
    private void send(Path file, Blob blob) throws IOException {
        demandHeld();
        String mark = UNNAMED + blob.sha256().hex();
        var marked = bucket.time(mark);
        if (marked.isEmpty()) {
            bucket.put(key(blob.sha256()), file, blob.sha256());
        } else {
            // somebody may be about to delete it
            turns.alone(blob.sha256(), () -> {
                bucket.put(key(blob.sha256()), file, blob.sha256());
                bucket.delete(mark);
            });
        }
        lengths.put(blob.sha256(), blob.length());
    }

    private void demandHeld() throws FilesAway {
        if (!held.getAsBoolean()) {
            throw new FilesAway(
                    place(), "the database server does not confirm that this server belongs to the site; is it away?");
        }
    }

    // --- out

    @Override
    public long length(Sha256 sha256) throws IOException {
        var known = lengths.of(sha256);
        return known.isPresent() ? known.getAsLong() : asked(sha256);
    }

    private long asked(Sha256 sha256) throws IOException {
        var head = bucket.head(key(sha256));
        if (head.isEmpty()) {
            throw missing(sha256);
        }
        if (isOther(head.get(), sha256)) {
            putAside(sha256, head.get().eTag());
            throw new DamagedFileException(sha256);
        }
        lengths.put(sha256, head.get().contentLength());
        return head.get().contentLength();
    }

    /** Whether the store itself knows that these are other bytes. */
    private static boolean isOther(HeadObjectResponse head, Sha256 sha256) {
        String known = head.checksumSHA256();
        return known != null && !known.contains("-") && !known.equals(Bucket.checksum(sha256)); // "-": of parts
    }

    private NoSuchFileException missing(Sha256 sha256) throws IOException {
        lengths.forget(sha256);
        if (paired && bucket.head(IDENTITY).isEmpty()) {
            throw new FilesAway(place(), "the bucket is not the one that this site was started with");
        }
        miss(sha256);
        return new NoSuchFileException(place() + key(sha256));
    }

    private void miss(Sha256 sha256) {
        if (missed.size() < MOST_MISSED) {
            missed.add(sha256);
        }
    }

    /**
     * @param tag of the bytes that were found to be others
     * @return whether they were still there: another server may have put the file again meanwhile
     */
    private boolean putAside(Sha256 sha256, String tag) throws IOException {
        lengths.forget(sha256);
        if (reading || !held.getAsBoolean()) {
            return true; // told, and left where it is
        }
        if (!bucket.move(key(sha256), tag, DAMAGED + sha256.hex())) {
            return false;
        }
        log.error("the stored file {} is damaged; what is left of it lies in {}{}", sha256, place(), DAMAGED);
        miss(sha256);
        return true;
    }

    @Override
    public boolean exists(Sha256 sha256) throws IOException {
        try {
            asked(sha256);
            return true;
        } catch (NoSuchFileException | DamagedFileException e) {
            return false;
        }
    }

    @Override
    public InputStream open(Sha256 sha256) throws IOException {
        length(sha256);
        return from(sha256, 0);
    }

    private StoredStream from(Sha256 sha256, long position) throws IOException {
        try {
            return bucket.get(key(sha256), position);
        } catch (NoSuchFileException e) {
            throw missing(sha256);
        }
    }

    @Override
    public Opened openAnywhere(Sha256 sha256) throws IOException {
        return new OpenedObject(length(sha256), position -> from(sha256, position));
    }

    @Override
    public Local local(Sha256 sha256) throws IOException {
        length(sha256);
        Path copy = TemporaryFiles.file();
        try {
            fetch(sha256, copy);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(copy);
            throw e;
        }
        return new Local() {
            @Override
            public Path path() {
                return copy;
            }

            @Override
            public void close() throws IOException {
                Files.deleteIfExists(copy);
            }
        };
    }

    private void fetch(Sha256 sha256, Path copy) throws IOException {
        try (var in = from(sha256, 0)) {
            if (!Blob.write(copy, in::transferTo).sha256().equals(sha256)) {
                putAside(sha256, in.tag());
                throw new DamagedFileException(sha256);
            }
        }
    }

    @Override
    public Optional<String> placeInFolder(Sha256 sha256) {
        return Optional.empty();
    }

    // --- care

    @Override
    public OptionalLong verify(Sha256 sha256) throws IOException {
        try {
            for (int look = 0; look < MOST_LOOKS; look++) {
                var read = read(sha256);
                if (read.blob().sha256().equals(sha256)) {
                    return OptionalLong.of(read.blob().length());
                }
                if (putAside(sha256, read.tag())) {
                    return OptionalLong.empty();
                }
            }
        } catch (NoSuchFileException e) {
            return OptionalLong.empty();
        }
        return OptionalLong.empty();
    }

    private record Read(Blob blob, String tag) {}

    private Read read(Sha256 sha256) throws IOException {
        var digest = Sha256.digest();
        try (var in = from(sha256, 0)) {
            long length = in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
            return new Read(new Blob(Sha256.finish(digest), length), in.tag());
        }
    }

    @Override
    public Optional<URI> lend(Sha256 sha256, Lent as) throws IOException {
        return Optional.of(bucket.sign(key(sha256), as));
    }

    @Override
    public Set<Sha256> missed() {
        var taken = Set.copyOf(missed);
        missed.removeAll(taken);
        return taken;
    }

    @Override
    public Swept sweep(Predicate<Sha256> named) throws IOException {
        demandHeld();
        return new BucketSweep(bucket, turns, this::demandHeld, clock.instant()).run(named);
    }

    @Override
    public void forEach(Consumer<Sha256> each) throws IOException {
        bucket.list(FILES, object -> {
            Bucket.digest(object).ifPresent(each);
            return true;
        });
    }

    @Override
    public void tryWriting() throws IOException {
        demandHeld();
        bucket.put(PROBE, new byte[] {1});
    }

    // --- which site's

    @Override
    public String place() {
        return bucket.name().toString();
    }

    @Override
    public void guardedBy(BooleanSupplier mayWrite) {
        held = mayWrite;
    }

    @Override
    public void onlyRead() {
        reading = true;
    }

    @Override
    public Optional<String> identity() throws IOException {
        try (var in = bucket.get(IDENTITY, 0)) {
            return Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8).strip());
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    @Override
    public void identify(String identity) throws IOException {
        demandHeld();
        bucket.put(IDENTITY, (identity + "\n").getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void pair() {
        paired = true;
    }

    @Override
    public boolean isEmpty() throws IOException {
        return bucket.isEmpty(FILES);
    }

    @Override
    public boolean holds(Sha256 sha256) throws IOException {
        return bucket.head(key(sha256)).isPresent();
    }

    @Override
    public void close() {
        bucket.close();
    }
}
