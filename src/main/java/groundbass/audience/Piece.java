package groundbass.audience;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** A piece of work that waits for a {@link SharedCommit}; made and awaited by one thread, performed by any. */
final class Piece<T> {
    /** Why a waiting thread goes on. */
    enum Turn {
        DONE,
        TO_LEAD
    }

    /** This piece, not its transaction, failed. */
    static final class Failed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient Piece<?> piece;

        private Failed(Piece<?> piece, RuntimeException cause) {
            super(cause);
            this.piece = piece;
        }

        Piece<?> piece() {
            return piece;
        }
    }

    private final Function<Handle, T> work;
    private final CompletableFuture<Turn> turn = new CompletableFuture<>();
    private final CompletableFuture<T> committed = new CompletableFuture<>();
    private T performed;

    Piece(Function<Handle, T> work) {
        this.work = work;
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
        turn.complete(Turn.DONE);
    }

    void fail(Throwable why) {
        committed.completeExceptionally(why);
        turn.complete(Turn.DONE);
    }

    void lead() {
        turn.complete(Turn.TO_LEAD);
    }

    Turn waitForTurn() {
        return turn.join();
    }

    /** Only after the turn; throws what made it fail. */
    T result() {
        try {
            return committed.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }
}
