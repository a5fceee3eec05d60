package groundbass.audience;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Lets many threads share a commit, which costs more than the work it commits: whoever comes first leads, runs what the
 * others have brought meanwhile in one transaction, and passes the lead on to the next in line. Each caller returns when
 * its own work is committed. Work is done one piece after another, so that two requests of one reader cannot miss each
 * other. Thread-safe.
 */
final class SharedCommit {
    /** Pieces in one transaction; bounds how long rows stay locked. */
    private static final int MOST = 64;

    private final Jdbi jdbi;
    private final Queue<Piece<?>> waiting = new ArrayDeque<>();
    private boolean led;

    SharedCommit(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /**
     * Runs work that may be run again if its first transaction fails, and touches nothing but the database.
     *
     * @throws RuntimeException what the work threw, or why there was no commit
     */
    <T> T run(Function<Handle, T> work) {
        var piece = new Piece<T>(work);
        if (leadsAtOnce(piece) || piece.waitForTurn() == Piece.Turn.TO_LEAD) lead();
        return piece.result();
    }

    private synchronized boolean leadsAtOnce(Piece<?> piece) {
        waiting.add(piece);
        if (led) return false;
        led = true;
        return true;
    }

    /** The leader's own piece is the first in line, and so in its batch. */
    private void lead() {
        List<Piece<?>> batch = batch();
        try {
            commit(batch);
        } finally {
            passOn();
        }
    }

    private synchronized List<Piece<?>> batch() {
        var batch = new ArrayList<Piece<?>>();
        while (batch.size() < MOST && !waiting.isEmpty()) batch.add(waiting.remove());
        return batch;
    }

    private synchronized void passOn() {
        if (waiting.isEmpty()) led = false;
        else waiting.element().lead();
    }

    /** A piece that fails takes nobody down: the rest is done without it, and it is tried once more on its own. */
    private void commit(List<Piece<?>> batch) {
        var left = new ArrayList<>(batch);
        var apart = new ArrayList<Piece<?>>();
        while (!left.isEmpty()) {
            try {
                jdbi.useTransaction(handle -> left.forEach(piece -> piece.perform(handle)));
                left.forEach(Piece::succeed);
                left.clear();
            } catch (Piece.Failed failed) {
                left.remove(failed.piece());
                if (batch.size() == 1) failed.piece().fail(failed.getCause());
                else apart.add(failed.piece());
            } catch (RuntimeException | Error noCommit) {
                left.forEach(piece -> piece.fail(noCommit));
                left.clear();
            }
        }
        apart.forEach(piece -> commit(List.of(piece)));
    }
}
