package groundbass.store.node;

import groundbass.store.Database;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A clock that goes as the database server's does, so that machines of one site agree about an hour, about when a job is
 * due and when a session has ended, however their own clocks are set. Between two looks it is this machine's clock, moved
 * by what the two differ. What a look cannot tell, as the answer took its time, is no difference.
 */
public final class ServerClock extends Clock {
    private static final Logger log = LoggerFactory.getLogger(ServerClock.class);
    private static final Duration WORTH_A_WORD = Duration.ofSeconds(5);

    private final Clock machine;
    private final ZoneId zone;
    private volatile Duration ahead = Duration.ZERO;

    public ServerClock(Clock machine) {
        this(machine, ZoneOffset.UTC);
    }

    private ServerClock(Clock machine, ZoneId zone) {
        this.machine = machine;
        this.zone = zone;
    }

    /** Looks at the server's clock; to be called every now and then. */
    public void set(Database database) {
        var before = machine.instant();
        var theirs = database.jdbi().withHandle(handle -> handle.createQuery("select clock_timestamp()")
                .mapTo(Instant.class)
                .one());
        set(before, theirs, machine.instant());
    }

    /** @param theirs what the server's clock said at some moment between two of ours */
    void set(Instant before, Instant theirs, Instant after) {
        var least = Duration.between(after, theirs);
        var most = Duration.between(before, theirs);
        if (ahead.compareTo(least) >= 0 && ahead.compareTo(most) <= 0) {
            return; // as good as it can be told
        }
        var fresh = least.plus(most.minus(least).dividedBy(2));
        if (fresh.minus(ahead).abs().compareTo(WORTH_A_WORD) > 0) {
            log.warn(
                    "the clock of this machine and that of the database server differ by {} s; the server's counts."
                            + " Set them by a time service.",
                    fresh.toSeconds());
        }
        ahead = fresh;
    }

    @Override
    public Instant instant() {
        return machine.instant().plus(ahead);
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    /** For showing alone: it does not follow the server's clock from now on. */
    @Override
    public Clock withZone(ZoneId other) {
        var moved = new ServerClock(machine, other);
        moved.ahead = ahead;
        return moved;
    }
}
