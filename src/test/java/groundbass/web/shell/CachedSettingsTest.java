package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.settings.SiteSettings;
import groundbass.store.SettableClock;
import groundbass.web.Site;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jdbi.v3.core.ConnectionException;
import org.junit.jupiter.api.Test;

class CachedSettingsTest {
    private final SettableClock clock = SettableClock.at(Site.START);
    private final AtomicReference<Supplier<SiteSettings>> stored = new AtomicReference<>(() -> named("First"));
    private final CachedSettings chosen = new CachedSettings(() -> stored.get().get(), clock);

    @Test
    void isReadOnceASecond() {
        assertThat(chosen.get()).isEqualTo(named("First"));
        stored.set(() -> named("Second"));
        clock.advance(Duration.ofMillis(999));
        assertThat(chosen.get()).isEqualTo(named("First"));
        clock.advance(Duration.ofMillis(1));
        assertThat(chosen.get()).isEqualTo(named("Second"));
    }

    @Test
    void whoChangesItSeesTheChangeAtOnce() {
        chosen.get();
        stored.set(() -> named("Second"));
        chosen.forget();
        assertThat(chosen.get()).isEqualTo(named("Second"));
    }

    @Test
    void theLastHoldsWhileTheDatabaseIsAway() {
        chosen.get();
        stored.set(() -> {
            throw new ConnectionException(new IllegalStateException("away"));
        });
        clock.advance(Duration.ofMinutes(1));
        assertThat(chosen.get()).isEqualTo(named("First"));
    }

    private static SiteSettings named(String name) {
        return new SiteSettings(name, "en", false, ZoneOffset.UTC, Optional.empty());
    }
}
