package groundbass.audience.download;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Lets many threads share a commit, which costs more than the work it commits: one writer takes all that has been
 * brought and runs it in one transaction. Work is done one piece after another, in the order in which it was brought, so
 * that two requests of one reader cannot miss each other. The writer's thread ends where there is nothing to do.
 * Thread-safe.
 */
final class GroupCommit {
    /** Pieces in one transaction; bounds how long rows stay locked. */
    private static final int MOST = 256;

    /** From the end of one commit to the next, so that a busy site shares them; whoever comes to an idle one does not wait. */
    private static final Duration APART = Duration.ofMillis(2);

    private static final Duration IDLE = Duration.ofSeconds(5);

    private final Jdbi jdbi;
    private final ExecutorService writer = writer();
    private final Queue<PendingWrite<?>> waiting = new ArrayDeque<>();
    private boolean writing;
    /** Used by the writer alone. */
    private long lastCommit = System.nanoTime() - APART.toNanos();

    GroupCommit(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    private static ExecutorService writer() {
        return new ThreadPoolExecutor(0, 1, IDLE.toSeconds(), TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
            var thread = new Thread(work, "records");
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Runs work and returns when it is committed. It may be run again if its first transaction fails, and touches
     * nothing but the database.
     *
     * @throws RuntimeException what the work threw, or why there was no commit
     */
    <T> T run(Function<Handle, T> work) {
        var piece = new PendingWrite<T>(work, failure -> {});
        bring(piece);
        return piece.result();
    }

    /** Runs work with one of the next commits; nobody waits for it, so {@code failed} is told if there was none. */
    void later(Consumer<Handle> work, Consumer<Throwable> failed) {
        bring(new PendingWrite<Void>(
                handle -> {
                    work.accept(handle);
                    return null;
                },
                failed));
    }

    private synchronized void bring(PendingWrite<?> piece) {
        waiting.add(piece);
        if (writing) return;
        writer.execute(this::write);
        writing = true;
    }

    private void write() {
        pause();
        for (List<PendingWrite<?>> batch = batch(); !batch.isEmpty(); batch = batch()) {
            commit(batch);
            lastCommit = System.nanoTime();
            pause();
        }
    }

    private void pause() {
        long until = lastCommit + APART.toNanos();
        for (long left = until - System.nanoTime(); left > 0; left = until - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
    }

    private synchronized List<PendingWrite<?>> batch() {
        var batch = new ArrayList<PendingWrite<?>>();
        while (batch.size() < MOST && !waiting.isEmpty()) batch.add(waiting.remove());
        writing = !batch.isEmpty();
        return batch;
    }

    /**
     * A piece that fails takes nobody down: the rest is done without it, and it is tried once more on its own. Nobody is
     * told before that is over, so that whoever comes after finds everything before decided.
     */
    private void commit(List<PendingWrite<?>> batch) {
        var left = new ArrayList<>(batch);
        var apart = new ArrayList<PendingWrite<?>>();
        boolean committed = false;
        while (!committed && !left.isEmpty()) {
            try {
                jdbi.useTransaction(handle -> left.forEach(piece -> piece.perform(handle)));
                committed = true;
            } catch (PendingWrite.Failed failed) {
                left.remove(failed.piece());
                if (batch.size() == 1) failed.piece().fail(failed.getCause());
                else apart.add(failed.piece());
            } catch (RuntimeException | Error noCommit) {
                left.forEach(piece -> piece.fail(noCommit));
                left.clear();
            }
        }
        apart.forEach(piece -> commit(List.of(piece)));
        left.forEach(PendingWrite::succeed);
    }
}
