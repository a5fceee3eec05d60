package groundbass.publishing.address;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.time.Clock;
import java.time.Duration;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/**
 * Whether the pages are there to which lessons link, where the site's owner lets the server ask: tried one after the other,
 * in the background, and remembered for a day in memory, by each node for itself. Thread-safe.
 */
public final class LinkTries implements AutoCloseable {
    static final Duration KEPT = Duration.ofDays(1);

    private static final int MOST_KEPT = 2_000;
    private static final int MOST_WAITING = 200;

    private final BooleanSupplier allowed;
    private final Function<String, LinkAnswer> trial;
    private final Executor executor;
    private final Runnable end;
    private final Clock clock;
    private final Cache<String, LinkAnswer> answers =
            Caffeine.newBuilder().maximumSize(MOST_KEPT).build();
    private final Set<String> underWay = ConcurrentHashMap.newKeySet();

    LinkTries(
            BooleanSupplier allowed, Function<String, LinkAnswer> trial, Executor executor, Runnable end, Clock clock) {
        this.allowed = allowed;
        this.trial = trial;
        this.executor = executor;
        this.end = end;
        this.clock = clock;
    }

    /** @param allowed whether the site's owner wants it, asked each time */
    public static LinkTries over(BooleanSupplier allowed, Clock clock) {
        var thread =
                new ThreadPoolExecutor(1, 1, 1, TimeUnit.MINUTES, new LinkedBlockingQueue<>(MOST_WAITING), work -> {
                    var made = new Thread(work, "links");
                    made.setDaemon(true);
                    return made;
                });
        thread.allowCoreThreadTimeOut(true);
        return new LinkTries(allowed, new LinkTrial(clock)::of, thread, thread::shutdownNow, clock);
    }

    /** For whoever never asks the net. */
    public static LinkTries none(Clock clock) {
        return over(() -> false, clock);
    }

    public boolean isOn() {
        return allowed.getAsBoolean();
    }

    /** Has those tried that were not within the day; returns at once. More than can wait are tried another time. */
    public void ask(Collection<String> addresses) {
        if (isOn()) {
            addresses.stream()
                    .distinct()
                    .filter(address -> known(address).isEmpty())
                    .forEach(this::enter);
        }
    }

    private void enter(String address) {
        if (!underWay.add(address)) {
            return;
        }
        try {
            executor.execute(() -> attempt(address));
        } catch (RejectedExecutionException full) {
            underWay.remove(address);
        }
    }

    private void attempt(String address) {
        try {
            answers.put(address, trial.apply(address));
        } finally {
            underWay.remove(address);
        }
    }

    /** What came of it, where that is less than a day ago. */
    public Optional<LinkAnswer> known(String address) {
        var after = clock.instant().minus(KEPT);
        return Optional.ofNullable(answers.getIfPresent(address))
                .filter(answer -> isOn() && answer.at().isAfter(after));
    }

    @Override
    public void close() {
        end.run();
    }
}
