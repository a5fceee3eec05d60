package groundbass.web.student.lesson;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.effort.ClockTicker;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;

/**
 * What was looked up not long ago, so that a page that everybody opens asks the database once for all of them. What was
 * not found is asked for again at once: a lesson that goes out is there for the next reader. Thread-safe.
 */
public final class TimedCache<K, V> {
    /** For what never changes, such as the files of a release. */
    public static final Duration FOR_GOOD = Duration.ofDays(365);

    private final Cache<K, V> known;

    private TimedCache(Cache<K, V> known) {
        this.known = known;
    }

    /** @param most how many to remember of what is small; the least asked for goes first */
    public static <K, V> TimedCache<K, V> small(Clock clock, Duration fresh, int most) {
        return new TimedCache<>(Caffeine.newBuilder()
                .maximumSize(most)
                .ticker(new ClockTicker(clock))
                .expireAfterWrite(fresh)
                .build());
    }

    /**
     * @param bytes how much all of it may take
     * @param size about how many bytes one takes
     */
    public static <K, V> TimedCache<K, V> within(long bytes, ToIntFunction<V> size) {
        return new TimedCache<>(Caffeine.newBuilder()
                .maximumWeight(bytes)
                .weigher((K key, V value) -> size.applyAsInt(value))
                .build());
    }

    /** The value of {@code key}, looked up if it is not here; who asks meanwhile waits for it. */
    public Optional<V> get(K key, Supplier<Optional<V>> lookUp) {
        return Optional.ofNullable(known.get(key, unknown -> lookUp.get().orElse(null)));
    }
}
