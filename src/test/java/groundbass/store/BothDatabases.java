package groundbass.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.support.ParameterDeclarations;

/**
 * Runs a parameterised test once on H2 and once on PostgreSQL, each time on a fresh database with the real
 * migrations: done once in each process, and copied. Use as {@code @ParameterizedTest @ArgumentsSource(BothDatabases.class)} with a {@link Database} parameter.
 */
public final class BothDatabases implements ArgumentsProvider {
    private static final AtomicInteger COUNT = new AtomicInteger();

    @Override
    public Stream<? extends Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context) {
        return Stream.of(
                Arguments.of(Named.of("H2", freshH2())), Arguments.of(Named.of("PostgreSQL", freshPostgres())));
    }

    /** A private in-memory H2: a copy of one that was migrated before. */
    public static Database freshH2() {
        String url = freshH2Url();
        try (var connection = DriverManager.getConnection(url);
                var session = connection.createStatement()) {
            session.execute(MigratedH2.SCRIPT);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return Database.open(url, "", "");
    }

    /** Lays a migrated embedded database into a folder that has none, as {@link Database#embedded} would make it. */
    public static void layEmbedded(Path folder) {
        try {
            Files.write(folder.resolve(MigratedFile.NAME), MigratedFile.BYTES);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String freshH2Url() {
        return "jdbc:h2:mem:test" + COUNT.incrementAndGet() + ";DB_CLOSE_DELAY=-1";
    }

    /** A new database of the other kind, with the tables that the migrations up to one of them make. */
    public static Database otherThan(Database one, String migration) {
        boolean isH2;
        try (var connection = one.dataSource().getConnection()) {
            isH2 = connection.getMetaData().getDatabaseProductName().equals("H2");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return isH2
                ? Database.create(freshPostgresUrl(), "postgres", "", migration)
                : Database.create(freshH2Url(), "", "", migration);
    }

    /** A copy of one that was migrated before: what the migrations do is the same each time. */
    private static Database freshPostgres() {
        return Database.open(freshPostgresUrl(MigratedPostgres.TEMPLATE), "postgres", "");
    }

    /** The address of a new, migrated database of a PostgreSQL server, whose user is {@code postgres} without a password. */
    public static String migratedPostgresUrl() {
        return freshPostgresUrl(MigratedPostgres.TEMPLATE);
    }

    private static String freshPostgresUrl() {
        return freshPostgresUrl("template0");
    }

    private static String freshPostgresUrl(String template) {
        String name = "test" + COUNT.incrementAndGet();
        Postgres.execute("create database " + name + " template " + template);
        return Postgres.SERVER.getJdbcUrl("postgres", name);
    }

    /** One server for all tests of a process, started when the first asks for it. */
    private static final class Postgres {
        static final EmbeddedPostgres SERVER = start();

        private static EmbeddedPostgres start() {
            try {
                // a session zone that is not UTC shows every time that was stored without its zone
                return EmbeddedPostgres.builder()
                        .setServerConfig("timezone", "Asia/Kathmandu")
                        .setServerConfig("fsync", "off")
                        .start();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** Two at once would find the template in use by each other. */
        static synchronized void execute(String statement) {
            try (var connection = SERVER.getPostgresDatabase().getConnection();
                    var session = connection.createStatement()) {
                session.execute(statement);
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private static final class MigratedH2 {
        static final String SCRIPT = script();

        private static String script() {
            String url = freshH2Url();
            Database.open(url, "", "").close();
            try (var connection = DriverManager.getConnection(url);
                    var session = connection.createStatement();
                    var lines = session.executeQuery("script nosettings")) {
                var script = new StringBuilder();
                while (lines.next()) {
                    script.append(lines.getString(1)).append('\n');
                }
                return script.toString();
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private static final class MigratedFile {
        static final String NAME = "groundbass.mv.db";
        static final byte[] BYTES = bytes();

        private static byte[] bytes() {
            try {
                var folder = Files.createTempDirectory("groundbass-migrated");
                Database.embedded(folder).close();
                byte[] bytes = Files.readAllBytes(folder.resolve(NAME));
                Files.delete(folder.resolve(NAME));
                Files.delete(folder);
                return bytes;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static final class MigratedPostgres {
        static final String TEMPLATE = make("migrated");

        private static String make(String name) {
            Postgres.execute("create database " + name + " template template0");
            Database.open(Postgres.SERVER.getJdbcUrl("postgres", name), "postgres", "")
                    .close();
            return name;
        }
    }
}
