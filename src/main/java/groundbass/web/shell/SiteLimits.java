package groundbass.web.shell;

import groundbass.audience.student.Tries;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;

/** The limits of a site: those of accounts in the database, for all nodes; those of networks in each node's memory. */
public final class SiteLimits implements RateLimits {
    private final MemoryLimits memory;
    private final Tries tries;

    public SiteLimits(Tries tries, Clock clock) {
        this.memory = new MemoryLimits(clock);
        this.tries = tries;
    }

    @Override
    public Optional<Duration> take(Limit limit, String key) {
        return switch (limit.keeper) {
            case DATABASE -> tries.take(limit.name() + ' ' + key, limit.times, limit.period);
            case MEMORY -> memory.take(limit, key);
        };
    }
}
