package groundbass.store.bucket;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import org.jdbi.v3.core.Jdbi;

/**
 * Lets one server at a time decide about a file: whether it is deleted or kept again. On a PostgreSQL server by an
 * advisory lock that ends with its transaction, elsewhere within this process, since there is no other server there.
 */
public final class FileTurns {
    private final Jdbi jdbi;
    private final boolean several;

    /** @param several whether the database is one that several servers work on */
    public FileTurns(Jdbi jdbi, boolean several) {
        this.jdbi = jdbi;
        this.several = several;
    }

    /** Something that is done to a file. */
    @FunctionalInterface
    interface Work {
        void run() throws IOException;
    }

    void alone(Sha256 sha256, Work work) throws IOException {
        if (!several) {
            synchronized (this) {
                work.run();
            }
            return;
        }
        try {
            jdbi.useTransaction(handle -> {
                handle.execute("select pg_advisory_xact_lock(?)", key(sha256));
                unchecked(work);
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static void unchecked(Work work) {
        try {
            work.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Files that share a key wait for each other, which is rare. */
    private static long key(Sha256 sha256) {
        return ByteBuffer.wrap(HexFormat.of().parseHex(sha256.hex())).getLong();
    }
}
