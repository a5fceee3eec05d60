package groundbass.web.shell;

import groundbass.catalog.settings.SiteSettings;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the educator chose for the site. Every page asks, so it is read at most once a second; who changes it calls
 * {@link #forget}, and another node sees the change a second later. While the database does not answer, the last that
 * was read holds, so that the page that says so can still be shown. Thread-safe.
 */
public final class CachedSettings implements Supplier<SiteSettings> {
    private static final Logger log = LoggerFactory.getLogger(CachedSettings.class);
    private static final Duration FRESH = Duration.ofSeconds(1);
    /** Each try may wait for a database that does not answer, and so would every page. */
    private static final Duration AFTER_FAILURE = Duration.ofSeconds(10);

    private final Supplier<SiteSettings> settings;
    private final Clock clock;
    private final AtomicReference<Read> last = new AtomicReference<>(new Read(SiteSettings.USUAL, Instant.MIN));

    public CachedSettings(Supplier<SiteSettings> settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public SiteSettings get() {
        var now = clock.instant();
        var read = last.get();
        return now.isBefore(read.until()) ? read.value() : readAgain(read, now);
    }

    /** Reads again when next asked. */
    public void forget() {
        last.updateAndGet(read -> new Read(read.value(), Instant.MIN));
    }

    private SiteSettings readAgain(Read before, Instant now) {
        try {
            var value = settings.get();
            last.set(new Read(value, now.plus(FRESH)));
            return value;
        } catch (JdbiException e) {
            log.warn("the settings cannot be read; going on with the last that were", e);
            last.compareAndSet(before, new Read(before.value(), now.plus(AFTER_FAILURE)));
            return before.value();
        }
    }

    private record Read(SiteSettings value, Instant until) {}
}
