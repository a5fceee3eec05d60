package groundbass.web.student;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What was looked up not long ago, so that a page that everybody opens asks the database once for all of them. What was
 * not found is asked for again at once: a lesson that goes out is there for the next reader. Thread-safe.
 */
final class Remembered<K, V> {
    /** For what never changes, such as the files of a release. */
    static final Duration FOR_GOOD = Duration.ofDays(365);

    private record Entry<V>(V value, Instant until) {}

    private final Clock clock;
    private final Duration fresh;
    private final Map<K, Entry<V>> entries;

    /** @param most how many to remember; the longest unasked goes first */
    Remembered(Clock clock, Duration fresh, int most) {
        this.clock = clock;
        this.fresh = fresh;
        this.entries = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, Entry<V>> eldest) {
                return size() > most;
            }
        };
    }

    /** The value of {@code key}, looked up if it is not here. Two callers may look it up at once; both are right. */
    Optional<V> get(K key, Supplier<Optional<V>> lookUp) {
        Instant now = clock.instant();
        return find(key, now).or(() -> keep(key, lookUp.get(), now));
    }

    private Optional<V> find(K key, Instant now) {
        synchronized (entries) {
            return Optional.ofNullable(entries.get(key))
                    .filter(entry -> now.isBefore(entry.until()))
                    .map(Entry::value);
        }
    }

    private Optional<V> keep(K key, Optional<V> found, Instant now) {
        synchronized (entries) {
            found.ifPresent(value -> entries.put(key, new Entry<>(value, now.plus(fresh))));
        }
        return found;
    }
}
