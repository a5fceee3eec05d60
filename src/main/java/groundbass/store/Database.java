package groundbass.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;

/** An open, migrated database: the embedded H2 or a PostgreSQL server. Thread-safe. */
public final class Database implements AutoCloseable {
    private static final int CONNECTIONS = 16;

    private final HikariDataSource pool;
    private final Jdbi jdbi;

    private Database(HikariDataSource pool) {
        this.pool = pool;
        this.jdbi = Jdbi.create(pool);
    }

    /** Opens the embedded database in a file of {@code folder}, creating it where it is missing. */
    public static Database embedded(Path folder) {
        // H2 holds a commit in memory for WRITE_DELAY milliseconds by default; an acknowledged download record
        // must outlive a killed process, so every commit is handed to the operating system at once.
        return open("jdbc:h2:file:" + folder.toAbsolutePath().resolve("groundbass") + ";WRITE_DELAY=0", "", "");
    }

    /** Opens any JDBC address (H2 or PostgreSQL) and brings its schema up to date. */
    public static Database open(String url, String user, String password) {
        var config = new HikariConfig();
        config.setJdbcUrl(url);
        config.setUsername(user);
        config.setPassword(password);
        config.setMaximumPoolSize(CONNECTIONS);
        config.setPoolName("database");
        var pool = new HikariDataSource(config);
        try {
            Flyway.configure()
                    .dataSource(pool)
                    .locations("classpath:migrations")
                    .load()
                    .migrate();
            return new Database(pool);
        } catch (RuntimeException e) {
            pool.close();
            throw e;
        }
    }

    public Jdbi jdbi() {
        return jdbi;
    }

    /** For libraries that speak JDBC themselves (the job scheduler). */
    public DataSource dataSource() {
        return pool;
    }

    @Override
    public void close() {
        pool.close();
    }
}
