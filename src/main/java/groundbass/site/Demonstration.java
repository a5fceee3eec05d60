package groundbass.site;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Loads the demonstration while the site is open. Where the site is closed meanwhile, it breaks off, and goes on at the next start. */
final class Demonstration implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Demonstration.class);

    private final Runnable work;
    private volatile boolean stopped;

    Demonstration(Runnable work) {
        this.work = work;
    }

    static Demonstration load(Runnable work) {
        var demonstration = new Demonstration(work);
        var loading = new Thread(demonstration::load, "demo");
        loading.setDaemon(true);
        loading.start();
        return demonstration;
    }

    void load() {
        try {
            work.run();
            log.info("the demo series is loaded");
        } catch (RuntimeException e) {
            if (!stopped) throw e;
            log.info("the demo series is loaded on after the next start");
        }
    }

    /** To be closed before what it works with. */
    @Override
    public void close() {
        stopped = true;
    }
}
