package groundbass.web.shell.log;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes into the log what was refused, and why. What is alike in an hour has a line the first time, the tenth, the
 * hundredth and so on: who is refused again and again must not be able to fill a disk. Thread-safe.
 */
public final class RefusalLog {
    private static final Logger log = LoggerFactory.getLogger(RefusalLog.class);
    private static final int TEN = 10;

    private final Cache<Kind, AtomicLong> known = Caffeine.newBuilder()
            .maximumSize(500)
            .expireAfterWrite(Duration.ofHours(1))
            .build();

    private record Kind(int status, String who, String why, String path) {}

    /**
     * @param who as far as that is known; never a stranger's address
     * @param why in words of ours, never of whoever asks
     */
    public void write(Context ctx, int status, String who, String why) {
        String path = AskedFor.route(ctx);
        long times = known.get(new Kind(status, who, why, path), kind -> new AtomicLong())
                .incrementAndGet();
        if (isPowerOfTen(times)) {
            log.warn(
                    "{} {}: {}, {}; by {}, time {} in an hour",
                    ctx.method(),
                    AskedFor.path(ctx),
                    status,
                    why,
                    who,
                    times);
        }
    }

    private static boolean isPowerOfTen(long times) {
        long left = times;
        while (left % TEN == 0) {
            left /= TEN;
        }
        return left == 1;
    }
}
