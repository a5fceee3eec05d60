package groundbass.web.shell;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Rate limits of one process, in memory, under digests whose key dies with the process. Thread-safe. */
public final class MemoryLimits implements RateLimits {
    private static final int MOST_KEYS = 20_000;
    private static final String DIGEST = "HmacSHA256";

    private final TimeMeter time;
    private final SecretKeySpec key;
    private final Map<String, Bucket> buckets = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > MOST_KEYS;
        }
    };

    public MemoryLimits(Clock clock) {
        this.time = new ClockMeter(clock);
        var random = new byte[32];
        new SecureRandom().nextBytes(random);
        this.key = new SecretKeySpec(random, DIGEST);
    }

    @Override
    public Optional<Duration> take(Limit limit, String who) {
        var probe = bucket(limit, digest(limit.name() + ' ' + who)).tryConsumeAndReturnRemaining(1);
        return probe.isConsumed() ? Optional.empty() : Optional.of(Duration.ofNanos(probe.getNanosToWaitForRefill()));
    }

    private Bucket bucket(Limit limit, String name) {
        synchronized (buckets) {
            return buckets.computeIfAbsent(name, n -> Bucket.builder()
                    .withCustomTimePrecision(time)
                    .addLimit(grant -> grant.capacity(limit.times).refillGreedy(limit.times, limit.period))
                    .build());
        }
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

    private record ClockMeter(Clock clock) implements TimeMeter {
        @Override
        public long currentTimeNanos() {
            return TimeUnit.MILLISECONDS.toNanos(clock.millis());
        }

        @Override
        public boolean isWallClockBased() {
            return true;
        }
    }
}
