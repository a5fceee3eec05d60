package groundbass.store;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Flushes a database once a second on a thread of its own, until closed. One failure does not end it. */
final class Checkpointer implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Checkpointer.class);
    private static final Duration EVERY = Duration.ofSeconds(1);

    private final Runnable flush;
    private final ScheduledExecutorService timer;

    private Checkpointer(Runnable flush) {
        this.flush = flush;
        this.timer = Executors.newSingleThreadScheduledExecutor(task -> {
            var thread = new Thread(task, "checkpointer");
            thread.setDaemon(true);
            return thread;
        });
    }

    static Checkpointer start(Runnable flush) {
        var checkpointer = new Checkpointer(flush);
        checkpointer.timer.scheduleWithFixedDelay(
                checkpointer::runOnce, EVERY.toMillis(), EVERY.toMillis(), TimeUnit.MILLISECONDS);
        return checkpointer;
    }

    void runOnce() {
        try {
            flush.run();
        } catch (RuntimeException | Error e) {
            log.warn("The database could not be flushed to the disk; trying again in {}", EVERY, e);
        }
    }

    /** Stops; a flush that is under way is waited for, so that it does not meet a closed pool. */
    @Override
    public void close() {
        timer.shutdown();
        try {
            timer.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
