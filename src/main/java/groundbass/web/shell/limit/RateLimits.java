package groundbass.web.shell.limit;

import groundbass.web.gate.Network;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.Optional;

/** Counts how often something is done. Keys are digested at once; no address is kept. */
public interface RateLimits {
    /** Takes one of what {@code limit} grants to {@code key}; empty if there was one, else how long to wait. */
    Optional<Duration> take(Limit limit, String key);

    /** Answers 429 with {@code Retry-After} (RFC 6585 section 4) where too much has been asked. */
    default void demand(Context ctx, Limit limit, String key) {
        take(limit, key).ifPresent(wait -> {
            throw WaitResponse.tooOften(limit, wait);
        });
    }

    /** The same, by the network of the caller. */
    default void demand(Context ctx, Limit limit) {
        demand(ctx, limit, Network.of(ctx));
    }
}
