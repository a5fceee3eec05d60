package groundbass;

import groundbass.audience.BrowserMark;
import groundbass.audience.Consents;
import groundbass.audience.DownloadToken;
import groundbass.audience.Downloads;
import groundbass.audience.Housekeeping;
import groundbass.audience.Sessions;
import groundbass.audience.SignIns;
import groundbass.audience.Statistics;
import groundbass.audience.Students;
import groundbass.audience.Tries;
import groundbass.audience.VisitorKey;
import groundbass.catalog.Audit;
import groundbass.catalog.Educators;
import groundbass.catalog.EpisodeDesk;
import groundbass.catalog.Episodes;
import groundbass.catalog.Recordings;
import groundbass.catalog.Revisions;
import groundbass.catalog.SeriesCatalog;
import groundbass.catalog.Settings;
import groundbass.catalog.Uploads;
import groundbass.post.Outbox;
import groundbass.post.Postman;
import groundbass.publishing.Addresses;
import groundbass.publishing.Demo;
import groundbass.publishing.GoingLive;
import groundbass.publishing.Publisher;
import groundbass.publishing.ReleaseQueue;
import groundbass.publishing.SeriesImport;
import groundbass.release.BrokenFiles;
import groundbass.release.MadeAudio;
import groundbass.release.NamedFiles;
import groundbass.release.ReleaseBuilder;
import groundbass.release.Releases;
import groundbass.release.StoreCare;
import groundbass.store.BlobFolder;
import groundbass.store.Database;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.time.Clock;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;
import org.jdbi.v3.core.Jdbi;

/** Everything below the pages, each part made once, in the order of the house from the ground up. */
final class Services {
    // --- store
    final Database database;
    final BlobFolder blobs;
    final Clock clock;
    // --- catalog, post
    final Audit audit;
    final Settings settings;
    final Educators educators;
    final Uploads uploads;
    final Recordings recordings;
    final SeriesCatalog catalog;
    final Episodes episodes;
    final EpisodeDesk desk;
    final Revisions revisions;
    final Outbox outbox;
    final Postman postman;
    final ExecutorService lettersUnderWay;
    // --- release, audience
    final Releases releases;
    final StoredFiles files;
    final ReleaseBuilder builder;
    final BrokenFiles brokenFiles;
    final StoreCare care;
    final Sessions sessions;
    final Students students;
    final Consents consents;
    final SignIns signIns;
    final Tries tries;
    final BrowserMark browserMark;
    final Downloads downloads;
    final Statistics statistics;
    final Housekeeping housekeeping;
    // --- publishing
    final Publisher publisher;
    final GoingLive goingLive;
    final Demo demo;

    /** @param address the site's origin, where the educator has not chosen another */
    Services(Config config, URI address, Clock clock, Database database) {
        this.database = database;
        this.clock = clock;
        this.blobs = blobs(config, clock);
        Jdbi jdbi = database.jdbi();

        this.audit = new Audit(jdbi, clock);
        this.settings = new Settings(jdbi, audit);
        Supplier<URI> publicAddress = () -> settings.current().publicAddress().orElse(address);
        this.educators = new Educators(jdbi, audit, clock);
        this.uploads = new Uploads(jdbi, blobs, audit, clock);
        this.recordings = new Recordings(jdbi, blobs);
        this.catalog = new SeriesCatalog(jdbi, audit, clock);
        this.episodes = new Episodes(jdbi);
        this.desk = new EpisodeDesk(jdbi, audit, clock);
        this.revisions = new Revisions(jdbi, clock);
        this.outbox = new Outbox(jdbi, clock);
        this.lettersUnderWay = Executors.newCachedThreadPool(Services::letterThread);
        var sender = MailDoor.sender(config, () -> settings.current().siteName(), clock);
        this.postman = new Postman(jdbi, sender, clock, lettersUnderWay);

        this.releases = new Releases(jdbi);
        var named = new NamedFiles(jdbi, releases, uploads);
        this.files = new StoredFiles(blobs, named, clock);
        this.builder = new ReleaseBuilder(
                releases, revisions, uploads, blobs, new MadeAudio(jdbi, releases, blobs, clock), clock);
        this.brokenFiles = new BrokenFiles(jdbi);
        this.care = new StoreCare(named, brokenFiles, releases, uploads, builder, blobs, clock);
        this.sessions = new Sessions(jdbi, clock);
        this.students = new Students(jdbi, outbox, clock);
        this.consents = new Consents(jdbi, clock);
        this.tries = new Tries(jdbi, clock);
        this.browserMark = BrowserMark.of(jdbi);
        this.signIns = new SignIns(jdbi, outbox, students, consents, sessions, publicAddress, clock);
        this.downloads = new Downloads(jdbi, DownloadToken.of(jdbi), new VisitorKey(clock), clock);
        this.statistics = new Statistics(jdbi);
        this.housekeeping = new Housekeeping(downloads, signIns, sessions, outbox, tries);

        Addresses addresses = id -> publicAddress.get() + "/e/" + id;
        var queue = new ReleaseQueue(database.dataSource(), clock);
        this.publisher = new Publisher(jdbi, clock, audit, releases, addresses, queue);
        this.goingLive = new GoingLive(jdbi, clock, audit, releases, publisher, queue, database::flush);
        var incoming = new SeriesImport(jdbi, clock, audit, releases, addresses, builder::build);
        this.demo = new Demo(jdbi, clock, educators, releases, incoming);
    }

    /** A letter that hangs keeps nothing from ending; it is tried again after the next start. */
    private static Thread letterThread(Runnable way) {
        var thread = new Thread(way, "letter");
        thread.setDaemon(true);
        return thread;
    }

    private static BlobFolder blobs(Config config, Clock clock) {
        try {
            return new BlobFolder(config.data().resolve("files"), clock);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot use the folder " + config.data(), e);
        }
    }
}
