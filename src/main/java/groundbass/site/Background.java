package groundbass.site;

import groundbass.publishing.jobs.Jobs;
import groundbass.publishing.jobs.Jobs.Pass;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What no request waits for: builds, the calendar, the post, tidying up, loading the demonstration. */
final class Background {
    private static final Logger log = LoggerFactory.getLogger(Background.class);
    /** Two for what comes round, so that an hour that has come waits for no long pass, beside one for a build. */
    private static final int THREADS = 3;
    /** So much is lost of what was counted where a process is killed. */
    private static final int SECONDS_OF_VISITS = 10;
    /** Lessons that are read in one pass; a site that is new to this program has read all of its own after a while. */
    private static final int READ_AT_ONCE = 20;

    private final Services services;
    private final Clock ticking;
    private final Closer open;

    /** @param ticking a clock that goes by itself: by it jobs come round */
    Background(Services services, Clock ticking, Closer open) {
        this.services = services;
        this.ticking = ticking;
        this.open = open;
    }

    void work() {
        var firstHour = new FirstHour(services.clock);
        var passes = List.of(
                new Pass("going-live", Duration.ofSeconds(5), services.publishing.publicationJob::pass),
                new Pass("find", Duration.ofSeconds(5), this::readWhatIsOut),
                new Pass("news", Duration.ofSeconds(5), services.publishing.newsRound::pass),
                new Pass("post", Duration.ofSeconds(5), services.postman::deliverDue),
                new Pass("listen", Duration.ofSeconds(2), services.recordings::listen),
                new Pass("tidy", Duration.ofMinutes(5), services.housekeeping::tidy),
                new Pass("sum-up", Duration.ofMinutes(5), services.audience.rollUps::pass),
                new Pass("mend", Duration.ofSeconds(10), services.making.care::mend),
                new Pass("look-through", Duration.ofMinutes(1), services.making.care::lookThrough),
                new Pass("trials", Duration.ofHours(1), this::forgetTrials),
                new Pass("made-audio", Duration.ofHours(1), services.making.made::forgetOld),
                new Pass("bin", Duration.ofHours(1), firstHour.spares(services.publishing.bin::empty)),
                new Pass(
                        "taken-out",
                        Duration.ofHours(1),
                        firstHour.spares(() -> services.takingOut.empty(services.making.releases.files()::names))),
                new Pass("sweep", Duration.ofHours(1), firstHour.spares(services.making.files::sweep)));
        open.add(services.lettersUnderWay::shutdownNow);
        open.add(writeVisits()::shutdownNow);
        open.add(Jobs.start(
                services.database.dataSource(),
                services.making.builder::build,
                services.publishing.publicationJob::pass,
                passes,
                THREADS,
                ticking));
        open.add(
                services.making.builder
                        ::stop); // before the jobs are ended, so that what breaks off is known to be stopped
    }

    /** Each node has visits of its own to write and to forget; passes are shared among nodes. */
    private ScheduledExecutorService writeVisits() {
        var writing = Executors.newSingleThreadScheduledExecutor(work -> {
            var thread = new Thread(work, "visits");
            thread.setDaemon(true);
            return thread;
        });
        writing.scheduleWithFixedDelay(this::writeSome, SECONDS_OF_VISITS, SECONDS_OF_VISITS, TimeUnit.SECONDS);
        return writing;
    }

    private void writeSome() {
        try {
            services.audience.downloads.forgetVisitors(); // first: it waits for no database
            services.audience.visits.write();
        } catch (RuntimeException | Error e) {
            log.warn("visits are not written yet", e); // thrown on, it would be the last time
        }
    }

    /** What went out is found a few seconds later. */
    private void readWhatIsOut() {
        services.making.index.catchUp(READ_AT_ONCE);
    }

    private void forgetTrials() {
        services.publishing.publisher.trials().forget(trial -> services.audience.previewLinks.isLinked(trial.value()));
    }

    /** Drawing the demo's lessons takes seconds, making their sound longer; the site is open meanwhile. */
    void demonstrate() {
        open.add(Demonstration.load(services.publishing.demo::load));
    }
}
