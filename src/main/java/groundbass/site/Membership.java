package groundbass.site;

import groundbass.store.Database;
import groundbass.store.node.Nodes;
import groundbass.store.node.SetUp;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a server does every few seconds to be one of a site's: tells that it is up, where there may be several, and looks at
 * the clock that all go by.
 */
final class Membership implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Membership.class);
    private static final int SECONDS = 5;

    private final Database database;
    private final Optional<Nodes> nodes;
    private final Consumer<Database> look;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(work -> {
        var thread = new Thread(work, "membership");
        thread.setDaemon(true);
        return thread;
    });

    private Membership(Database database, Optional<Nodes> nodes, Consumer<Database> look) {
        this.database = database;
        this.nodes = nodes;
        this.look = look;
    }

    /**
     * @param look looks at the database server's clock
     * @throws groundbass.store.CannotOpen where a server of this site is set up otherwise
     */
    static Membership enter(Config config, int port, Database database, Consumer<Database> look) {
        look.accept(database);
        var nodes = config.files()
                .map(bucket -> new Nodes(
                        database.jdbi(),
                        new SetUp(
                                config.publicAddress(port).toString(),
                                config.mail().map(Config.MailServer::host).orElse("")),
                        version()));
        nodes.ifPresent(Nodes::enter);
        var membership = new Membership(database, nodes, look);
        membership.timer.scheduleWithFixedDelay(membership::beat, SECONDS, SECONDS, TimeUnit.SECONDS);
        return membership;
    }

    private static String version() {
        return Optional.ofNullable(Membership.class.getPackage().getImplementationVersion())
                .orElse("");
    }

    private void beat() {
        try {
            nodes.ifPresent(Nodes::beat);
            look.accept(database);
        } catch (RuntimeException | Error e) { // thrown on, it would be the last beat
            log.warn("the database server does not answer; this server tells again that it is up", e);
        }
    }

    @Override
    public void close() {
        timer.shutdownNow();
        awaitBeat();
        nodes.ifPresent(Nodes::close);
    }

    /** One that is under way would enter this server again after it has left. */
    private void awaitBeat() {
        try {
            if (!timer.awaitTermination(SECONDS, TimeUnit.SECONDS)) {
                log.warn("the database server does not answer; this server counts as up for some seconds more");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
