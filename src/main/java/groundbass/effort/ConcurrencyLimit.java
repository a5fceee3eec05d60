package groundbass.effort;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Work that needs so much memory or time that only a little of it may be done at once. A few wait for their turn, in the
 * order in which they came; whoever finds the queue full, or waits too long, is told so. Waiting holds a thread, so the
 * queue is short. Thread-safe.
 */
public final class ConcurrencyLimit {
    private final Semaphore turns;
    private final Semaphore places;
    private final Duration patience;

    /**
     * @param atOnce how much is done at once
     * @param waiting how many may wait beside that
     * @param patience how long each of them waits
     */
    public ConcurrencyLimit(int atOnce, int waiting, Duration patience) {
        this.turns = new Semaphore(atOnce, true);
        this.places = new Semaphore(atOnce + waiting);
        this.patience = patience;
    }

    /**
     * Does the work when its turn comes.
     *
     * @throws Busy where it does not come soon
     */
    public <T> T take(Supplier<T> work) {
        if (!places.tryAcquire()) {
            throw new Busy(patience);
        }
        try {
            return inTurn(work);
        } finally {
            places.release();
        }
    }

    private <T> T inTurn(Supplier<T> work) {
        if (!comes()) {
            throw new Busy(patience);
        }
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }

    private boolean comes() {
        try {
            return turns.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
