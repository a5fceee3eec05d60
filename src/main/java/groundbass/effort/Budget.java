package groundbass.effort;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;
import java.lang.management.ManagementFactory;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * Processor time that people may spend. Nobody knows beforehand what a piece of work costs, so it is paid afterwards: who
 * has spent all of a period's time waits until a little has come back. What one piece can cost at most, whoever begins it
 * has to bound by its size. Thread-safe.
 */
public final class Budget {
    private static final int MOST_PEOPLE = 10_000;

    private final ConcurrencyLimit machine;
    private final int atOnceEach;
    private final Duration timeEach;
    private final Duration period;
    private final TimeMeter time;
    private final LongSupplier processor;
    private final Cache<String, Purse> purses;

    /**
     * @param machine the turns that all people share
     * @param atOnceEach how much one of them may do or wait for at once
     * @param timeEach processor time of one of them in each {@code period}
     */
    public Budget(ConcurrencyLimit machine, int atOnceEach, Duration timeEach, Duration period, Clock clock) {
        this(
                machine,
                atOnceEach,
                timeEach,
                period,
                clock,
                ManagementFactory.getThreadMXBean()::getCurrentThreadCpuTime);
    }

    /** @param processor nanoseconds that the calling thread has used so far */
    Budget(
            ConcurrencyLimit machine,
            int atOnceEach,
            Duration timeEach,
            Duration period,
            Clock clock,
            LongSupplier processor) {
        this.machine = machine;
        this.atOnceEach = atOnceEach;
        this.timeEach = timeEach;
        this.period = period;
        this.time = new ClockMeter(clock);
        this.processor = processor;
        this.purses = Caffeine.newBuilder()
                .maximumSize(MOST_PEOPLE)
                .expireAfterAccess(period)
                .build();
    }

    /** One person's turns and what is left of their time. */
    private record Purse(ConcurrencyLimit turns, Bucket millis) {}

    /**
     * Does the work and takes what it cost.
     *
     * @throws Busy where the machine or this person has too much to do
     */
    public <T> T spend(String who, Supplier<T> work) {
        var purse = purses.get(who, name -> full());
        var probe = purse.millis().estimateAbilityToConsume(1);
        if (!probe.canBeConsumed()) {
            throw new Busy(Duration.ofNanos(probe.getNanosToWaitForRefill()));
        }
        return purse.turns().take(() -> machine.take(() -> measured(purse, work)));
    }

    private <T> T measured(Purse purse, Supplier<T> work) {
        long before = processor.getAsLong();
        try {
            return work.get();
        } finally {
            long millis = TimeUnit.NANOSECONDS.toMillis(processor.getAsLong() - before);
            purse.millis().consumeIgnoringRateLimits(Math.max(1, millis));
        }
    }

    private Purse full() {
        var bucket = Bucket.builder()
                .withCustomTimePrecision(time)
                .addLimit(limit -> limit.capacity(timeEach.toMillis()).refillGreedy(timeEach.toMillis(), period))
                .build();
        return new Purse(new ConcurrencyLimit(atOnceEach, 0, Duration.ofSeconds(1)), bucket);
    }
}
