package groundbass.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import groundbass.store.migration.FirstTables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jdbi.v3.core.ConnectionFactory;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;
import org.jdbi.v3.core.statement.StatementExceptions;
import org.jdbi.v3.core.statement.StatementExceptions.MessageRendering;

/** An open, migrated database: the embedded H2 or a PostgreSQL server. Thread-safe. */
public final class Database implements AutoCloseable {
    private static final int ALREADY_OPEN = 90020; // H2's ErrorCode.DATABASE_ALREADY_OPEN_1

    private static final int CONNECTIONS = 16;
    // the rest is opened when it is needed: a start need not wait for sixteen sessions of a server
    private static final int IDLE_CONNECTIONS = 2;
    /** How long a request waits for a database that does not answer before it is told so. */
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    private static final String AT_ONCE = ";WRITE_DELAY=0";

    private final HikariDataSource pool;
    private final Jdbi jdbi;
    private final H2Flush flush;
    private final Optional<Checkpointer> checkpointer;

    private Database(HikariDataSource pool) {
        this.pool = pool;
        this.jdbi = Jdbi.create(pool);
        // a fault is logged, and what was bound may be a letter or an address
        jdbi.configure(StatementExceptions.class, config -> config.setMessageRendering(MessageRendering.NONE));
        ServiceLoader.load(JdbiPlugin.class).forEach(jdbi::installPlugin);
        this.flush = new H2Flush(jdbi);
        this.checkpointer =
                is(pool, "jdbc:h2:file:") ? Optional.of(Checkpointer.start(flush::ifWritten)) : Optional.empty();
    }

    private static boolean is(HikariDataSource pool, String kind) {
        return pool.getJdbcUrl().startsWith(kind);
    }

    /** Opens the embedded database in a file of {@code folder}, creating it where it is missing. */
    public static Database embedded(Path folder) {
        if (!isEmbeddedIn(folder)) {
            FirstTables.make(embeddedFile(folder, ""), url -> FirstConnection.open(url, "", ""));
        }
        return open(embeddedUrl(folder), "", "");
    }

    /** The same for whoever only reads. @throws CannotOpen where an earlier or a newer program has made its tables */
    public static Database embeddedUnchanged(Path folder) {
        return openUnchanged(embeddedUrl(folder), "", "");
    }

    /**
     * Makes the embedded database in a folder that has none, with the tables of an earlier program.
     *
     * @throws CannotOpen where there is one, or where that migration is not known
     */
    public static Database newEmbedded(Path folder, String migration) {
        return create(embeddedUrl(folder), "", "", migration);
    }

    /** Whether a folder has an embedded database, whatever is in it. */
    public static boolean isEmbeddedIn(Path folder) {
        return Files.exists(embeddedFile(folder, ".mv.db"));
    }

    private static Path embeddedFile(Path folder, String ending) {
        return folder.toAbsolutePath().resolve("groundbass" + ending);
    }

    private static String embeddedUrl(Path folder) {
        // H2 holds a commit in memory for WRITE_DELAY milliseconds by default; an acknowledged download record
        // must outlive a killed process, so every commit is handed to the operating system at once. H2 would also close
        // itself as soon as the program is told to stop, under requests that the server still answers. "retry:" opens
        // the file again where an interrupted thread closed it, so that a job cut short does not end the site.
        LastCommit.find(embeddedFile(folder, ".mv.db"));
        return "jdbc:h2:file:retry:" + embeddedFile(folder, "") + AT_ONCE + ";DB_CLOSE_ON_EXIT=FALSE";
    }

    /**
     * While its tables are made nothing is acknowledged, and each of the many statements need not go to the disk by itself: a
     * start that is cut short does again what is missing. Whoever connects next has every commit written at once again.
     */
    private static String whileTablesAreMade(String url) {
        return url.replace(AT_ONCE, ";WRITE_DELAY=1000");
    }

    /**
     * Opens any JDBC address (H2 or PostgreSQL) and brings its schema up to date.
     *
     * @throws CannotOpen where it does not answer, is damaged, or belongs to a newer program
     */
    public static Database open(String url, String user, String password) {
        return open(url, user, password, (first, schema) -> {
            if (!Schema.isUpToDate(first)) {
                schema.get().bringUpToDate();
            }
        });
    }

    /**
     * Opens any JDBC address for whoever only reads: its schema stays as it is.
     *
     * @throws CannotOpen where it does not answer, is damaged, or was written by an earlier or a newer program
     */
    public static Database openUnchanged(String url, String user, String password) {
        return open(url, user, password, (first, schema) -> {
            if (!Schema.isUpToDate(first)) {
                schema.get().demandUpToDate();
            }
        });
    }

    /**
     * Makes the tables of an earlier program in a database that has none.
     *
     * @throws CannotOpen where it does not answer, has tables of ours, or where that migration is not known
     */
    public static Database create(String url, String user, String password, String migration) {
        return open(url, user, password, (first, schema) -> schema.get().create(migration));
    }

    /** @param prepare does what is to be done to its schema, which it need not ask for: to make one takes a while */
    private static Database open(
            String url, String user, String password, BiConsumer<Connection, Supplier<Schema>> prepare) {
        try (Connection first = FirstConnection.open(url, user, password)) {
            first.setReadOnly(true); // it only holds the database open for what follows
            prepare.accept(first, () -> Schema.patient(whileTablesAreMade(url), user, password));
            return new Database(pool(url, user, password));
        } catch (SQLException e) {
            throw new IllegalStateException("the database cannot be opened", e);
        }
    }

    /** Whether opening failed because another process has the embedded database open. */
    public static boolean isInUse(Throwable failure) {
        return failure instanceof SQLException e && e.getErrorCode() == ALREADY_OPEN;
    }

    /**
     * A connection of its own to a database server, beside every pool; it ends when it is closed.
     *
     * @param name how the server lists it
     * @throws CannotOpen where the server does not answer or refuses us
     */
    public static Handle session(String url, String user, String password, String name) {
        try {
            var connection = FirstConnection.open(url, user, password, name);
            ConnectionFactory only = () -> connection; // as a factory, so that closing the handle closes it
            return Jdbi.create(only).installPlugin(new StoredValues()).open();
        } catch (SQLException e) {
            throw new IllegalStateException("the database cannot be opened", e);
        }
    }

    /** Whether this is the address of a server that others may be connected to as well. */
    public static boolean isServer(String url) {
        return url.startsWith("jdbc:postgresql:");
    }

    private static HikariDataSource pool(String url, String user, String password) {
        var config = new HikariConfig();
        config.setJdbcUrl(url);
        config.setUsername(user);
        config.setPassword(password);
        config.setDataSourceProperties(FirstConnection.properties(url));
        config.setMaximumPoolSize(CONNECTIONS);
        config.setMinimumIdle(IDLE_CONNECTIONS);
        config.setConnectionTimeout(PATIENCE.toMillis());
        config.setValidationTimeout(PATIENCE.toMillis());
        config.setPoolName("database");
        return new HikariDataSource(config);
    }

    /** Writes a row, to see whether that can be done. @throws org.jdbi.v3.core.JdbiException where it cannot */
    public void tryWriting() {
        jdbi.useHandle(handle -> handle.createUpdate("update pulse set beat = beat + 1 where id = 1")
                .setQueryTimeout((int) PATIENCE.toSeconds())
                .execute());
    }

    /** The last migration that was done to it. */
    public String migration() {
        return Schema.of(pool).migration();
    }

    /** Its tables but for the list of migrations, in the order in which they were made: each refers to earlier ones. */
    public List<String> tables() {
        return Schema.of(pool).tables();
    }

    public Jdbi jdbi() {
        return jdbi;
    }

    /** For libraries that speak JDBC themselves (the job scheduler). */
    public DataSource dataSource() {
        return pool;
    }

    /**
     * Forces everything committed so far onto the disk, so that it outlives a power cut. H2 hands a commit to the
     * operating system only; PostgreSQL forces every commit itself, and there this does nothing.
     */
    public void flush() {
        if (is(pool, "jdbc:h2:")) {
            flush.now();
        }
    }

    @Override
    public void close() {
        checkpointer.ifPresent(Checkpointer::close);
        pool.close();
    }
}
