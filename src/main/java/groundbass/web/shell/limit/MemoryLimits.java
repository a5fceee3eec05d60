package groundbass.web.shell.limit;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.effort.ClockMeter;
import groundbass.effort.ClockTicker;
import io.github.bucket4j.Bucket;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Rate limits of one process, in memory, under digests whose key dies with the process. Each limit has a table of its
 * own, so that what is cheap pushes out nothing of what is dear. Thread-safe.
 */
public final class MemoryLimits implements RateLimits {
    private static final int MOST_KEYS = 20_000;
    private static final String DIGEST = "HmacSHA256";

    private final ClockMeter time;
    private final SecretKeySpec key;
    private final Map<Limit, Cache<String, Bucket>> tables = new EnumMap<>(Limit.class);

    public MemoryLimits(Clock clock) {
        this.time = new ClockMeter(clock);
        for (var limit : Limit.values()) {
            tables.put(limit, table(limit, clock));
        }
        var random = new byte[32];
        new SecureRandom().nextBytes(random);
        this.key = new SecretKeySpec(random, DIGEST);
    }

    /** A bucket that nobody has asked for a whole period is full again, and as good as none. */
    private static Cache<String, Bucket> table(Limit limit, Clock clock) {
        return Caffeine.newBuilder()
                .maximumSize(MOST_KEYS)
                .ticker(new ClockTicker(clock))
                .expireAfterAccess(limit.period)
                .build();
    }

    @Override
    public Optional<Duration> take(Limit limit, String who) {
        var bucket = tables.get(limit).get(digest(limit.name() + ' ' + who), name -> full(limit));
        var probe = bucket.tryConsumeAndReturnRemaining(1);
        return probe.isConsumed() ? Optional.empty() : Optional.of(Duration.ofNanos(probe.getNanosToWaitForRefill()));
    }

    private Bucket full(Limit limit) {
        return Bucket.builder()
                .withCustomTimePrecision(time)
                .addLimit(grant -> grant.capacity(limit.times).refillGreedy(limit.times, limit.period))
                .build();
    }

    private String digest(String text) {
        try {
            var mac = Mac.getInstance(DIGEST);
            mac.init(key);
            return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }
}
