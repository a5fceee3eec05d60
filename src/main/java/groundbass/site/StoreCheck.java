package groundbass.site;

import groundbass.identity.Sha256;
import groundbass.store.Database;
import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Whether every stored file that rows name is there and is what its digest says.
 *
 * @param good how many are
 * @param bytes how long these are together
 * @param bad what is missing or damaged; a running site finds it too, and makes anew what it can
 * @param unnamed how many files no row names; a running site takes them away in time
 */
public record StoreCheck(long good, long bytes, List<Sha256> bad, long unnamed) {
    private static final int AT_ONCE = 1_000;

    public StoreCheck {
        bad = List.copyOf(bad);
    }

    /**
     * Reads all of them from the disk, and changes nothing.
     *
     * @throws groundbass.store.CannotOpen where the folder belongs to another database
     */
    public static StoreCheck of(Database database, Config config, Clock clock) throws IOException {
        var stored = Stored.toRead(database, Accounts.over(database.jdbi(), clock), config, clock);
        StoredFiles.compare(stored, database.jdbi());
        long good = 0;
        long bytes = 0;
        var bad = new ArrayList<Sha256>();
        for (var next = stored.named().after("", AT_ONCE); !next.isEmpty(); next = after(stored, next)) {
            for (var sha256 : next) {
                var length = stored.blobs().verify(sha256);
                if (length.isPresent()) {
                    good++;
                    bytes += length.getAsLong();
                } else {
                    bad.add(sha256);
                }
            }
        }
        return new StoreCheck(good, bytes, bad, unnamed(stored));
    }

    private static List<Sha256> after(Stored stored, List<Sha256> last) {
        return stored.named().after(last.get(last.size() - 1).hex(), AT_ONCE);
    }

    private static long unnamed(Stored stored) throws IOException {
        var unnamed = new AtomicLong();
        stored.blobs().forEach(sha256 -> unnamed.addAndGet(stored.named().contain(sha256) ? 0 : 1));
        return unnamed.get();
    }
}
