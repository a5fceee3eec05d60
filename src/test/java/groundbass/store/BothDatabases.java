package groundbass.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
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
 * migrations. Use as {@code @ParameterizedTest @ArgumentsSource(BothDatabases.class)} with a {@link Database} parameter.
 */
public final class BothDatabases implements ArgumentsProvider {
    private static final AtomicInteger COUNT = new AtomicInteger();
    private static EmbeddedPostgres postgres;

    @Override
    public Stream<? extends Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context) {
        return Stream.of(
                Arguments.of(Named.of("H2", freshH2())), Arguments.of(Named.of("PostgreSQL", freshPostgres())));
    }

    /** A private in-memory H2. */
    public static Database freshH2() {
        return Database.open(freshH2Url(), "", "");
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

    private static Database freshPostgres() {
        return Database.open(freshPostgresUrl(), "postgres", "");
    }

    private static synchronized String freshPostgresUrl() {
        try {
            if (postgres == null) {
                // a session zone that is not UTC shows every time that was stored without its zone
                postgres = EmbeddedPostgres.builder()
                        .setServerConfig("timezone", "Asia/Kathmandu")
                        .setServerConfig("fsync", "off")
                        .start();
            }
            String name = "test" + COUNT.incrementAndGet();
            try (var connection = postgres.getPostgresDatabase().getConnection();
                    var statement = connection.createStatement()) {
                statement.execute("create database " + name);
            }
            return postgres.getJdbcUrl("postgres", name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
