package groundbass.site;

import groundbass.publishing.Jobs;
import groundbass.publishing.Jobs.Pass;
import java.time.Duration;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What no request waits for: builds, the calendar, the post, tidying up, loading the demonstration. */
final class Background {
    private static final Logger log = LoggerFactory.getLogger(Background.class);
    private static final int THREADS = 2;

    private final Services services;
    private final Closer open;

    Background(Services services, Closer open) {
        this.services = services;
        this.open = open;
    }

    void work() {
        var passes = List.of(
                new Pass("going-live", Duration.ofSeconds(5), services.publicationJob::pass),
                new Pass("news", Duration.ofSeconds(5), services.newsRound::pass),
                new Pass("post", Duration.ofSeconds(5), services.postman::deliverDue),
                new Pass("listen", Duration.ofSeconds(2), services.recordings::listen),
                new Pass("tidy", Duration.ofMinutes(5), services.housekeeping::tidy),
                new Pass("mend", Duration.ofSeconds(10), services.care::mend),
                new Pass("look-through", Duration.ofMinutes(1), services.care::lookThrough),
                new Pass("trials", Duration.ofHours(1), this::forgetTrials),
                new Pass("sweep", Duration.ofHours(1), services.files::sweep));
        open.add(services.lettersUnderWay::shutdownNow);
        open.add(Jobs.start(
                services.database.dataSource(),
                services.builder::build,
                services.publicationJob::pass,
                passes,
                THREADS));
        open.add(services.builder::stop); // before the jobs are ended, so that what breaks off is known to be stopped
    }

    private void forgetTrials() {
        services.publisher.trials().forget(trial -> services.previewLinks.isLinked(trial.value()));
    }

    /** The demo's releases take seconds to build; the site is open meanwhile. */
    void demonstrate() {
        var loading = new Thread(this::load, "demo");
        loading.setDaemon(true);
        loading.start();
    }

    private void load() {
        services.demo.load();
        log.info("the demo series is loaded");
    }
}
