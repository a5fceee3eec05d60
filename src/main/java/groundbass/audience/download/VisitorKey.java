package groundbass.audience.download;

import groundbass.identity.Hmac;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * The key under which an anonymous visitor is found again. It lives in memory alone, at most 24 hours, and is then
 * overwritten: from that moment no digest can be traced to an address by anybody. The price is that a second request is
 * not found across the change of keys, a restart, or two nodes. Thread-safe.
 */
public final class VisitorKey {
    public static final Duration LIFE = Duration.ofHours(24);

    private static final int BYTES = 32;

    private final SecureRandom random = new SecureRandom();
    private final byte[] key = new byte[BYTES];
    private final Clock clock;
    private Instant madeAt = Instant.MIN;

    public VisitorKey(Clock clock) {
        this.clock = clock;
    }

    /** Sixty-four hexadecimal digits, the same for the same visitor as long as the key lives. */
    public synchronized String digest(String address, String userAgent) {
        if (isOld()) renew();
        return HexFormat.of().formatHex(Hmac.of(key, address + "\n" + userAgent));
    }

    /** Overwrites a key whose day is over, even if nobody comes. */
    public synchronized void destroyIfOld() {
        if (!isOld()) return;
        Arrays.fill(key, (byte) 0);
        madeAt = Instant.MIN;
    }

    private boolean isOld() {
        return madeAt.equals(Instant.MIN) || !clock.instant().isBefore(madeAt.plus(LIFE));
    }

    private void renew() {
        random.nextBytes(key);
        madeAt = clock.instant();
    }
}
