package groundbass.site;

import groundbass.store.CannotOpen;
import groundbass.store.fault.FolderFault;
import groundbass.store.node.DatabaseLock;
import groundbass.store.node.FolderLock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a process holds while it works on a site, so that no second one does where that would hurt: the folder, where files
 * or the embedded database lie in one ({@link FolderLock}), and the database, where that is a server's
 * ({@link DatabaseLock}). Where files lie in an object store and rows on a database server, several servers hold the site
 * together, and keep away whoever would have it alone.
 */
public final class SiteLock implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(SiteLock.class);
    private static final int SECONDS_BETWEEN_LOOKS = 5;

    private final Closer open = new Closer();
    private Optional<DatabaseLock> database = Optional.empty();

    private SiteLock() {}

    /**
     * For a server, or for an operator's program that adds files.
     *
     * @throws groundbass.store.CannotOpen where another process is at work on the site that this one may not meet
     */
    public static SiteLock take(Config config, Clock clock) {
        return take(config, config.files().isEmpty(), clock);
    }

    /** For what no server may see half done. @throws groundbass.store.CannotOpen where any other process is at work there */
    static SiteLock takeAlone(Config config, Clock clock) {
        return take(config, true, clock);
    }

    private static SiteLock take(Config config, boolean alone, Clock clock) {
        var lock = new SiteLock();
        try {
            lock.takeBoth(config, alone, clock);
            return lock;
        } catch (RuntimeException | Error e) {
            lock.close();
            throw e;
        }
    }

    private void takeBoth(Config config, boolean alone, Clock clock) {
        if (config.usesFolder()) {
            makeFolder(config.data());
            open.add(FolderLock.take(config.data(), clock.instant()));
        }
        database = config.database()
                .filter(server -> config.isOnServer())
                .map(server -> open.add(DatabaseLock.take(
                        server.url(), server.user(), server.password().value(), alone)));
    }

    private static void makeFolder(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new FolderFault("cannot make the folder " + folder, e);
        }
    }

    /** @throws CannotOpen where one that this process may not meet may be at work on the site by now */
    void demandHeld() {
        if (!isHeld()) {
            throw new CannotOpen("The database does not answer any more. See that its server runs, and try again.");
        }
    }

    /** Whether nobody works on the site at this moment whom this process may not meet. */
    boolean isHeld() {
        return database.map(DatabaseLock::isHeld).orElse(true);
    }

    /**
     * From now on looks every few seconds whether it is still held, and takes it again where it is not.
     *
     * @param lost told once, where another server came first: this one has to end
     */
    void watch(Consumer<String> lost) {
        database.ifPresent(lock -> {
            var looking = timer();
            open.add(looking::shutdownNow);
            looking.scheduleWithFixedDelay(
                    () -> look(lock, looking, lost), SECONDS_BETWEEN_LOOKS, SECONDS_BETWEEN_LOOKS, TimeUnit.SECONDS);
        });
    }

    private static void look(DatabaseLock lock, ScheduledExecutorService looking, Consumer<String> lost) {
        try {
            lock.keep().ifPresent(other -> {
                looking.shutdown();
                log.error("another server has taken this site while the database was away: {}", other);
                lost.accept(other);
            });
        } catch (RuntimeException | Error e) { // thrown on, it would be the last look
            log.warn("it cannot be seen whether this is the only server of the site", e);
        }
    }

    private static ScheduledExecutorService timer() {
        return Executors.newSingleThreadScheduledExecutor(work -> {
            var thread = new Thread(work, "site-lock");
            thread.setDaemon(true);
            return thread;
        });
    }

    @Override
    public void close() {
        open.close();
    }
}
