package groundbass.web.shell;

import groundbass.catalog.SiteSettings;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the educator chose for the site, as it stands now; while the database does not answer, as it stood last, so that
 * the page that says so can still be shown. Thread-safe.
 */
public final class Chosen implements Supplier<SiteSettings> {
    private static final Logger log = LoggerFactory.getLogger(Chosen.class);

    private final Supplier<SiteSettings> settings;
    private final AtomicReference<SiteSettings> last = new AtomicReference<>(SiteSettings.USUAL);

    public Chosen(Supplier<SiteSettings> settings) {
        this.settings = settings;
    }

    @Override
    public SiteSettings get() {
        try {
            last.set(settings.get());
        } catch (JdbiException e) {
            log.warn("the settings cannot be read; going on with the last that were", e);
        }
        return last.get();
    }
}
