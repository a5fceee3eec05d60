package groundbass.audience.student;

import groundbass.identity.Sha256;
import groundbass.store.fault.UniqueViolation;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/**
 * Counts how often something is tried for one account, for all nodes together, in rows that no flood of other requests
 * pushes out. An allowance of so many tries comes back evenly over its period: kept as the one moment at which it will be
 * whole again, as the generic cell rate algorithm does (ITU-T I.371, annex A).
 */
public final class Tries {
    private final Jdbi jdbi;
    private final Clock clock;

    public Tries(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Takes one of so many tries in a period; empty if there was one, else how long to wait for the next. */
    public Optional<Duration> take(String name, int times, Duration period) {
        String hash = Sha256.of(name.getBytes(StandardCharsets.UTF_8)).hex();
        var each = period.dividedBy(times);
        try {
            return jdbi.inTransaction(handle -> take(handle, hash, each, period));
        } catch (UnableToExecuteStatementException e) {
            if (!UniqueViolation.is(e)) throw e; // else somebody was faster, whose row is there now
            return jdbi.inTransaction(handle -> take(handle, hash, each, period));
        }
    }

    private Optional<Duration> take(Handle handle, String hash, Duration each, Duration period) {
        var now = clock.instant();
        var row = wholeAt(handle, hash);
        var before = row.filter(now::isBefore).orElse(now);
        var after = before.plus(each);
        var wait = Duration.between(now.plus(period), after);
        if (wait.compareTo(Duration.ZERO) > 0) {
            return Optional.of(wait);
        }
        String change = row.isPresent()
                ? "update tries set whole_at = :at where name_hash = :hash"
                : "insert into tries (name_hash, whole_at) values (:hash, :at)";
        handle.createUpdate(change).bind("hash", hash).bind("at", after).execute();
        return Optional.empty();
    }

    private static Optional<Instant> wholeAt(Handle handle, String hash) {
        return handle.createQuery("select whole_at from tries where name_hash = :hash for update")
                .bind("hash", hash)
                .mapTo(Instant.class)
                .findOne();
    }

    /** Deletes what says nothing any more. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from tries where whole_at < :now")
                .bind("now", clock.instant())
                .execute());
    }
}
