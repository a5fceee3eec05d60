package groundbass.web.shell.log;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes faults of ours into the log: where one came from once an hour, and each time that it happened. Whoever finds a
 * request that fails must not be able to fill a disk with it. Thread-safe.
 */
public final class FaultLog {
    private static final Logger log = LoggerFactory.getLogger(FaultLog.class);
    private static final int DEEPEST = 4;

    private final Cache<String, AtomicLong> known = Caffeine.newBuilder()
            .maximumSize(500)
            .expireAfterWrite(Duration.ofHours(1))
            .build();

    public void write(String id, Context ctx, Exception fault) {
        long times = known.get(place(fault), place -> new AtomicLong()).incrementAndGet();
        if (times == 1) {
            log.error("fault {} at {} {}", id, ctx.method(), AskedFor.path(ctx), fault);
        } else {
            log.error(
                    "fault {} at {} {}, time {} of {}",
                    id,
                    ctx.method(),
                    AskedFor.path(ctx),
                    times,
                    fault.getClass().getName());
        }
    }

    /** Faults of one kind from one place are one fault. */
    private static String place(Throwable fault) {
        var place = new StringBuilder(fault.getClass().getName());
        var trace = fault.getStackTrace();
        for (int i = 0; i < Math.min(DEEPEST, trace.length); i++) {
            place.append('\n').append(trace[i]);
        }
        return place.toString();
    }
}
