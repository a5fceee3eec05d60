package groundbass.site;

import groundbass.audience.visit.LessonVisits;
import groundbass.demo.Rehearsal;
import groundbass.store.Database;
import groundbass.store.node.ServerClock;
import groundbass.web.shell.Installation;
import groundbass.web.shell.Routes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A running site, and the one place where its parts are wired: plain {@code new}, in the order of the house from the
 * ground up. What must be closed goes through {@code open.add}, and is closed in reverse.
 */
public final class Groundbass implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Groundbass.class);

    private final Closer open;
    private final SiteLock lock;
    private final Database database;
    private final Installation installation;
    private final int port;
    private final SetUpNotice setUpNotice;
    private final List<Routes.Route> routes;
    private final LessonVisits visits;

    private Groundbass(
            Closer open,
            SiteLock lock,
            Database database,
            Installation installation,
            int port,
            SetUpNotice setUpNotice,
            List<Routes.Route> routes,
            LessonVisits visits) {
        this.open = open;
        this.lock = lock;
        this.database = database;
        this.installation = installation;
        this.port = port;
        this.setUpNotice = setUpNotice;
        this.routes = routes;
        this.visits = visits;
    }

    /**
     * Opens everything and listens; on failure everything opened so far is closed again. Its clock is this machine's, or where
     * the database is a server's, that server's.
     */
    public static Groundbass start(Config config) {
        var clock = new ServerClock(Clock.systemUTC());
        return start(config, clock, clock, clock::set);
    }

    /** The same for a test that moves the clock; jobs come round by the machine's. */
    public static Groundbass start(Config config, Clock clock) {
        return start(config, clock, Clock.systemUTC());
    }

    /** @param ticking by which jobs come round: by the same clock where a year is to pass in minutes */
    static Groundbass start(Config config, Clock clock, Clock ticking) {
        return start(config, clock, ticking, database -> {});
    }

    private static Groundbass start(Config config, Clock clock, Clock ticking, Consumer<Database> look) {
        var open = new Closer();
        try {
            return start(config, clock, ticking, look, open);
        } catch (RuntimeException | Error e) {
            open.close();
            throw e;
        }
    }

    private static Groundbass start(Config config, Clock clock, Clock ticking, Consumer<Database> look, Closer open) {
        var lock = open.add(SiteLock.take(config, clock));
        int port = config.port() == 0 ? freePort() : config.port();
        var installation = installation(config, port);
        var rehearsal = config.beginsDemo() ? Optional.of(Rehearsal.begin()) : Optional.<Rehearsal>empty();
        var database = open.add(config.openDatabase());
        if (config.isOnServer()) {
            open.add(Membership.enter(config, port, database, look));
        }
        var services = new Services(config, installation.publicAddress(), clock, database);
        var disk = Optional.of(config.data()).filter(data -> config.usesFolder());
        var metrics = config.metrics().map(token -> open.add(Metrics.of(disk, database)));
        metrics.ifPresent(figures -> figures.watch(services));
        open.add(services.blobs::close);
        open.add(services.making.stems);
        services.blobs.guardedBy(lock::isHeld);
        services.making.files.demandWritable(database);
        services.making.files.pairWith(database.jdbi());
        open.add(services.audience.downloads);
        open.add(services.audience.visits);
        open.add(services.publishing.links);
        // an earlier code ends before anybody can type it
        var code = Optional.of(services)
                .filter(all -> !config.demo())
                .map(all -> SetUpNotice.withCode(all.educators.firstRun()));
        var server = open.add(Website.open(config, port, installation, services, metrics));
        log.info("open {} in a browser", installation.publicAddress());
        if (config.isExposed()) {
            log.warn(
                    "listening on {} without a front server: passwords and sign-in links cross the network unencrypted;"
                            + " put a server with TLS in front (--behind-proxy) or listen on 127.0.0.1",
                    config.host());
        }
        // the password of the demonstration's account takes a while, and no reader waits for it
        var setUpNotice = code.orElseGet(() -> SetUpNotice.intoTheDemo(services.publishing.demo.openStudio()));
        var background = new Background(services, ticking, open);
        background.work();
        rehearsal.ifPresent(Rehearsal::end);
        if (config.demo()) {
            background.demonstrate();
        }
        return new Groundbass(
                open, lock, database, installation, port, setUpNotice, server.routes(), services.audience.visits);
    }

    private static Installation installation(Config config, int port) {
        return new Installation(
                config.publicAddress(port),
                config.publicAddress().isPresent(),
                config.demo(),
                config.hops(),
                config.handOver());
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
    public SetUpNotice setUpNotice() {
        return setUpNotice;
    }

    /** Every way into the site. */
    public List<Routes.Route> routes() {
        return routes;
    }

    /** Writes the visits that were counted so far: before somebody looks, instead of some seconds later. */
    public void settle() {
        visits.write();
    }

    /** @param lost told, once, where another server has taken the site: this one must be closed */
    public void whenTaken(Consumer<String> lost) {
        lock.watch(lost);
    }

    public Database database() {
        return database;
    }

    @Override
    public void close() {
        open.close();
    }
}
