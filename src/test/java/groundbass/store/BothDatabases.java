package groundbass.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
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
        return Database.open("jdbc:h2:mem:test" + COUNT.incrementAndGet() + ";DB_CLOSE_DELAY=-1", "", "");
    }

    private static synchronized Database freshPostgres() {
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
            return Database.open(postgres.getJdbcUrl("postgres", name), "postgres", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (java.sql.SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
