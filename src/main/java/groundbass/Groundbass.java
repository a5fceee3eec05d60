package groundbass;

import groundbass.audience.Consents;
import groundbass.audience.DownloadToken;
import groundbass.audience.Downloads;
import groundbass.audience.Housekeeping;
import groundbass.audience.Sessions;
import groundbass.audience.SignIns;
import groundbass.audience.Statistics;
import groundbass.audience.Students;
import groundbass.audience.VisitorKey;
import groundbass.catalog.Audit;
import groundbass.catalog.Educators;
import groundbass.catalog.EpisodeDesk;
import groundbass.catalog.Episodes;
import groundbass.catalog.Revisions;
import groundbass.catalog.SeriesCatalog;
import groundbass.catalog.Settings;
import groundbass.catalog.Uploads;
import groundbass.post.DevelopmentSender;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.post.Postman;
import groundbass.post.Sender;
import groundbass.post.SmtpSender;
import groundbass.post.SmtpSettings;
import groundbass.post.SmtpSettings.Encryption;
import groundbass.publishing.Addresses;
import groundbass.publishing.Demo;
import groundbass.publishing.GoingLive;
import groundbass.publishing.Jobs;
import groundbass.publishing.Jobs.Pass;
import groundbass.publishing.Publisher;
import groundbass.publishing.ReleaseQueue;
import groundbass.publishing.SeriesImport;
import groundbass.release.ReleaseBuilder;
import groundbass.release.Releases;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.store.Database;
import groundbass.web.WebServer;
import groundbass.web.answer.HandOver;
import groundbass.web.desk.DeskPages;
import groundbass.web.general.AssetFiles;
import groundbass.web.general.GeneralPages;
import groundbass.web.general.HealthPage;
import groundbass.web.shell.Chosen;
import groundbass.web.shell.Doorkeeper;
import groundbass.web.shell.Errors;
import groundbass.web.shell.Installation;
import groundbass.web.shell.MemoryLimits;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.SignedInVisitors;
import groundbass.web.statistics.StatisticsPages;
import groundbass.web.student.StudentPages;
import groundbass.web.view.Assets;
import groundbass.web.view.Templates;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A running site, and the one place where its parts are wired: plain {@code new}, in the order of DESIGN's house from
 * the ground up. What must be closed goes through {@code open.add}, and is closed in reverse.
 */
public final class Groundbass implements AutoCloseable {
    private static final int BACKGROUND_THREADS = 2;
    private static final int SUBMISSIONS = 465; // RFC 8314 section 7.3: encrypted from the first byte
    private static final Logger log = LoggerFactory.getLogger(Groundbass.class);

    private final Closing open;
    private final Database database;
    private final Installation installation;
    private final int port;
    private final FirstSteps firstSteps;

    private Groundbass(Closing open, Database database, Installation installation, int port, FirstSteps firstSteps) {
        this.open = open;
        this.database = database;
        this.installation = installation;
        this.port = port;
        this.firstSteps = firstSteps;
    }

    /** Opens everything and listens; on failure everything opened so far is closed again. */
    public static Groundbass start(Config config, Clock clock) {
        var open = new Closing();
        try {
            return start(config, clock, open);
        } catch (RuntimeException | Error e) {
            open.close();
            throw e;
        }
    }

    private static Groundbass start(Config config, Clock clock, Closing open) {
        int port = config.port() == 0 ? freePort() : config.port();
        var installation = installation(config, port);
        // --- store
        var database = open.add(database(config));
        var jdbi = database.jdbi();
        var blobs = blobs(config, clock);
        // --- catalog, post
        var audit = new Audit(jdbi, clock);
        var settings = new Settings(jdbi, audit);
        var educators = new Educators(jdbi, audit, clock);
        var uploads = new Uploads(jdbi, blobs, audit, clock);
        var outbox = new Outbox(jdbi, clock);
        var catalog = new SeriesCatalog(jdbi, audit, clock);
        var episodes = new Episodes(jdbi);
        var episodeDesk = new EpisodeDesk(jdbi, audit, clock);
        // --- release, audience
        var releases = new Releases(jdbi);
        var builder = new ReleaseBuilder(releases, new Revisions(jdbi, clock), uploads, blobs, clock);
        var sessions = new Sessions(jdbi, clock);
        var students = new Students(jdbi, outbox, clock);
        var consents = new Consents(jdbi, clock);
        var signIns = new SignIns(jdbi, outbox, students, consents, sessions, installation.publicAddress(), clock);
        var downloads = new Downloads(jdbi, DownloadToken.of(jdbi), new VisitorKey(clock), clock);
        // --- publishing
        Addresses addresses =
                id -> settings.current().publicAddress().orElse(installation.publicAddress()) + "/e/" + id;
        var queue = new ReleaseQueue(database.dataSource(), clock);
        var publisher = new Publisher(jdbi, clock, audit, releases, addresses, queue);
        var goingLive = new GoingLive(jdbi, clock, audit, releases, publisher, queue, database::flush);
        // --- web: what every page needs, then the page groups
        var assets = new Assets();
        var chosen = new Chosen(settings::current, clock);
        var pages = new Pages(new Templates(assets), installation, chosen);
        var cookie = new SessionCookie(installation);
        var doorkeeper = new Doorkeeper(new SignedInVisitors(sessions), cookie);
        var limits = new MemoryLimits(clock);
        var groups = new ArrayList<PageGroup>(
                List.of(new GeneralPages(pages), new HealthPage(jdbi), new AssetFiles(assets)));
        groups.addAll(StudentPages.of(
                new StudentPages.Shell(pages, installation, chosen, doorkeeper, cookie, limits, clock),
                new StudentPages.Library(catalog, episodes, new Revisions(jdbi, clock), releases, blobs),
                new StudentPages.Audience(
                        signIns,
                        sessions,
                        students,
                        consents,
                        downloads,
                        new Statistics(jdbi),
                        config.mail().isPresent())));
        groups.addAll(DeskPages.of(
                new DeskPages.Shell(pages, doorkeeper, cookie, limits, chosen),
                new DeskPages.Services(
                        educators,
                        sessions,
                        catalog,
                        episodes,
                        episodeDesk,
                        uploads,
                        releases,
                        publisher,
                        outbox,
                        settings,
                        clock)));
        groups.add(new StatisticsPages(pages, doorkeeper, catalog, episodes, new Statistics(jdbi), students, clock));
        open.add(WebServer.start(config.host(), port, installation, doorkeeper, new Errors(pages), groups));
        log.info("open {} in a browser", installation.publicAddress());
        // --- what no request waits for
        var passes = List.of(
                new Pass("going-live", Duration.ofSeconds(5), goingLive::pass),
                new Pass("post", Duration.ofSeconds(5), new Postman(jdbi, sender(config, clock), clock)::deliverDue),
                new Pass("tidy", Duration.ofMinutes(5), new Housekeeping(downloads, signIns, sessions, outbox)::tidy),
                new Pass("sweep", Duration.ofHours(1), () -> sweep(blobs, uploads, releases)));
        Runnable work = () -> open.add(
                Jobs.start(database.dataSource(), builder::build, goingLive::pass, passes, BACKGROUND_THREADS));
        if (!config.demo()) {
            work.run();
            return new Groundbass(open, database, installation, port, FirstSteps.withCode(educators.firstRun()));
        }
        var incoming = new SeriesImport(jdbi, clock, audit, releases, addresses, builder::build);
        var demo = new Demo(jdbi, clock, educators, releases, incoming);
        var invitation = demo.openStudio();
        demonstrate(demo, work);
        return new Groundbass(open, database, installation, port, FirstSteps.intoTheDemo(invitation));
    }

    /** The demo's releases take seconds to build, and the site is open meanwhile; then comes what others ask for. */
    private static void demonstrate(Demo demo, Runnable work) {
        demo.openStudio()
                .ifPresent(invitation ->
                        log.info("the demo's desk: sign in as {} with {}", invitation.email(), invitation.password()));
        var loading = new Thread(
                () -> {
                    demo.load();
                    log.info("the demo series is loaded");
                    work.run();
                },
                "demo");
        loading.setDaemon(true);
        loading.start();
    }

    private static void sweep(Blobs blobs, Uploads uploads, Releases releases) {
        try {
            blobs.sweep(sha256 -> uploads.names(sha256) || releases.names(sha256));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Blobs blobs(Config config, Clock clock) {
        try {
            return new BlobFolder(config.data().resolve("files"), clock);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot use the folder " + config.data(), e);
        }
    }

    /** Without a mail server letters stay where the educator can read them. */
    private static Sender sender(Config config, Clock clock) {
        return config.mail()
                .<Sender>map(server -> new SmtpSender(settings(server), clock))
                .orElseGet(DevelopmentSender::new);
    }

    private static SmtpSettings settings(Config.MailServer server) {
        var from = EmailAddress.read(server.from())
                .orElseThrow(() -> new IllegalArgumentException("no address to send from: " + server.from()));
        var login = server.user()
                .map(name -> new SmtpSettings.Login(
                        name, server.password().map(Secret::value).orElse("")));
        return new SmtpSettings(server.host(), server.port(), encryption(server), login, from, "Groundbass");
    }

    private static Encryption encryption(Config.MailServer server) {
        if (server.host().equals("localhost") || server.host().equals("127.0.0.1")) {
            return Encryption.NONE;
        }
        return server.port() == SUBMISSIONS ? Encryption.FROM_THE_START : Encryption.STARTTLS;
    }

    private static Database database(Config config) {
        try {
            Files.createDirectories(config.data());
        } catch (IOException e) {
            throw new UncheckedIOException("cannot make the folder " + config.data(), e);
        }
        return config.database()
                .map(server -> Database.open(
                        server.url(), server.user(), server.password().value()))
                .orElseGet(() -> Database.embedded(config.data()));
    }

    private static Installation installation(Config config, int port) {
        var handOver = config.handOver().map(location -> new HandOver(config.data(), location));
        return new Installation(config.publicAddress(port), config.demo(), config.behindProxy(), handOver);
    }

    // The public address is needed before anything listens, so "any free port" is settled here.
    private static int freePort() {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int port() {
        return port;
    }

    /** The address to open. */
    public URI address() {
        return installation.publicAddress();
    }

    /** What the console tells whoever starts the site for the first time; to be shown, never logged. */
    public FirstSteps firstSteps() {
        return firstSteps;
    }

    public Database database() {
        return database;
    }

    @Override
    public void close() {
        open.close();
    }
}
