package groundbass;

import groundbass.audience.Sessions;
import groundbass.catalog.Audit;
import groundbass.catalog.Settings;
import groundbass.store.Database;
import groundbass.web.WebServer;
import groundbass.web.answer.HandOver;
import groundbass.web.general.AssetFiles;
import groundbass.web.general.GeneralPages;
import groundbass.web.general.HealthPage;
import groundbass.web.general.HomePage;
import groundbass.web.shell.Chosen;
import groundbass.web.shell.Doorkeeper;
import groundbass.web.shell.Errors;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.SignedInVisitors;
import groundbass.web.view.Assets;
import groundbass.web.view.Templates;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.time.Clock;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A running site, and the one place where its parts are wired: plain {@code new}, in the order of DESIGN's house from
 * the ground up. What must be closed goes through {@code open.add}, and is closed in reverse.
 */
public final class Groundbass implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Groundbass.class);

    private final Closing open;
    private final Database database;
    private final Installation installation;
    private final int port;

    private Groundbass(Closing open, Database database, Installation installation, int port) {
        this.open = open;
        this.database = database;
        this.installation = installation;
        this.port = port;
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
        // --- store
        var database = open.add(database(config));
        var jdbi = database.jdbi();
        // --- catalog, post
        var audit = new Audit(jdbi, clock);
        var settings = new Settings(jdbi, audit);
        // --- release, audience
        var sessions = new Sessions(jdbi, clock);
        // --- publishing
        // --- web: what every page needs, then the page groups
        var installation = installation(config, port);
        var assets = new Assets();
        var chosen = new Chosen(settings::current, clock);
        var pages = new Pages(new Templates(assets), installation, chosen);
        var doorkeeper = new Doorkeeper(new SignedInVisitors(sessions), new SessionCookie(installation));
        List<PageGroup> groups = List.of(
                new HomePage(pages, List::of), new GeneralPages(pages), new HealthPage(jdbi), new AssetFiles(assets));
        open.add(WebServer.start(config.host(), port, installation, doorkeeper, new Errors(pages), groups));
        log.info("open {} in a browser", installation.publicAddress());
        return new Groundbass(open, database, installation, port);
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

    public Database database() {
        return database;
    }

    @Override
    public void close() {
        open.close();
    }
}
