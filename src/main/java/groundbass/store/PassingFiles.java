package groundbass.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Files of this process that can be made again, and are kept only because that takes a while: no row names them, no sweep
 * and no backup sees them. What was made at once lies in a folder of its own; what nobody has asked for longest goes where
 * all have more bytes than they may, and nothing is left when this is closed. Thread-safe.
 *
 * @param <K> tells what they were made for
 * @param <V> what was made, which names its files by their digests
 */
public final class PassingFiles<K, V> implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(PassingFiles.class);
    private static final float LOAD = 0.75f;

    private final Path folder;
    private final long most;
    private final Clock clock;
    private final Map<K, Place<V>> places = new LinkedHashMap<>(16, LOAD, true);
    private long bytes;

    /** What was made, and where its files are. */
    public record Kept<V>(V what, Blobs files) {}

    private record Place<V>(Kept<V> kept, Path folder, long bytes) {}

    /** Makes something whose files it puts into {@code files}. */
    public interface Making<V> {
        V into(Blobs files) throws IOException;
    }

    /**
     * @param folder of nothing else, which need not be there; what an earlier process left in it goes
     * @param most bytes that all may have together; what was made last stays, however large it is
     */
    public PassingFiles(Path folder, long most, Clock clock) {
        this.folder = folder;
        this.most = most;
        this.clock = clock;
        delete(folder);
    }

    public synchronized Optional<Kept<V>> find(K key) {
        return Optional.ofNullable(places.get(key)).map(Place::kept);
    }

    /** Makes it and keeps it, in the place of what was there. */
    public Kept<V> keep(K key, Making<V> making) throws IOException {
        var own = folder.resolve(RandomId.next());
        try {
            var files = new BlobFolder(own, clock);
            var place = new Place<>(new Kept<>(making.into(files), files), own, size(own));
            enter(key, place);
            return place.kept();
        } catch (IOException | RuntimeException e) {
            delete(own);
            throw e;
        }
    }

    private synchronized void enter(K key, Place<V> place) {
        drop(key);
        places.put(key, place);
        bytes += place.bytes();
        while (bytes > most && places.size() > 1) {
            drop(places.keySet().iterator().next());
        }
    }

    /** Takes away what is kept of it, if anything is. */
    public synchronized void drop(K key) {
        var place = places.remove(key);
        if (place != null) {
            bytes -= place.bytes();
            delete(place.folder());
        }
    }

    private static long size(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            return files.mapToLong(file -> file.toFile().length()).sum();
        }
    }

    private static void delete(Path folder) {
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (NoSuchFileException e) {
            return; // nothing was kept yet
        } catch (IOException | UncheckedIOException e) {
            log.warn("left lying until the next start: {}", folder, e);
        }
    }

    @Override
    public synchronized void close() {
        places.clear();
        bytes = 0;
        delete(folder);
    }
}
