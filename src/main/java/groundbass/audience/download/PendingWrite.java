package groundbass.audience.download;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** A piece of work that waits for a {@link GroupCommit}; brought by one thread, performed by another. */
final class PendingWrite<T> {
    /** This piece, not its transaction, failed. */
    static final class Failed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient PendingWrite<?> piece;

        private Failed(PendingWrite<?> piece, RuntimeException cause) {
            super(cause);
            this.piece = piece;
        }

        PendingWrite<?> piece() {
            return piece;
        }
    }

    private final Function<Handle, T> work;
    private final Consumer<Throwable> failed;
    private final CompletableFuture<T> committed = new CompletableFuture<>();
    private T performed;

    /** @param failed is told why there was no commit; {@link #result} tells it too */
    PendingWrite(Function<Handle, T> work, Consumer<Throwable> failed) {
        this.work = work;
        this.failed = failed;
    }

    void perform(Handle handle) {
        try {
            performed = work.apply(handle);
        } catch (RuntimeException e) {
            throw new Failed(this, e);
        }
    }

    void succeed() {
        committed.complete(performed);
    }

    void fail(Throwable why) {
        committed.completeExceptionally(why);
        failed.accept(why);
    }

    /** Waits for the commit; throws what made it fail. */
    T result() {
        try {
            return committed.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }
}
