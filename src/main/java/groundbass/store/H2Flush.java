package groundbass.store;

import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Forces H2's file onto the disk, at once or only where something was written since the last time. */
final class H2Flush {
    private final Jdbi jdbi;
    private Optional<String> writesAtLastFlush = Optional.empty();

    H2Flush(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    void now() {
        jdbi.useHandle(H2Flush::checkpoint);
    }

    /** An idle database is left alone, so that the disk may sleep. Called by one thread. @return whether it flushed */
    boolean ifWritten() {
        return jdbi.withHandle(handle -> {
            var writes = writes(handle); // what is written from here on is flushed the next time
            if (writes.isPresent() && writes.equals(writesAtLastFlush)) {
                return false;
            }
            checkpoint(handle);
            writesAtLastFlush = writes;
            return true;
        });
    }

    private static void checkpoint(Handle handle) {
        handle.execute("checkpoint sync");
    }

    /** H2's own count of writes to its file; an in-memory database has none. */
    private static Optional<String> writes(Handle handle) {
        return handle.createQuery("""
                        select setting_value from information_schema.settings where setting_name = 'info.FILE_WRITE'""").mapTo(String.class).findOne();
    }
}
