package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.migration.MigrationLog;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is made and read without the migrating library is held against what that makes and says itself. */
class MigrationLogTest {
    @TempDir
    private Path folder;

    /** All of H2's own script but for the hours, and how long each took. */
    @Test
    void anEmbeddedDatabaseIsMadeAsTheLibraryMakesIt() throws SQLException {
        Database.embedded(folder.resolve("ours")).close();
        assertThat(script(folder.resolve("ours"))).hasSizeGreaterThan(100).isEqualTo(script(byTheLibrary()));
    }

    /** Nothing is pending, and what was done has the checksums of what is here. */
    @Test
    void theLibraryFindsNothingToDoInIt() {
        Database.embedded(folder).close();
        var flyway = Flyway.configure()
                .dataSource(url(folder), "", "")
                .locations("classpath:migrations")
                .load();
        assertThat(flyway.validateWithResult().validationSuccessful).isTrue();
        assertThat(flyway.migrate().migrationsExecuted).isZero();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatTheLibraryHasDoneIsWhole(Database database) throws SQLException {
        try (database;
                var connection = database.dataSource().getConnection()) {
            assertThat(MigrationLog.isWhole(connection)).isTrue();
        }
    }

    /** Each of these the library would do something about, or refuse. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "delete from \"flyway_schema_history\" where \"version\" = '2'",
                "update \"flyway_schema_history\" set \"success\" = false where \"version\" = '2'",
                "update \"flyway_schema_history\" set \"checksum\" = 7 where \"version\" = '2'",
                "insert into \"flyway_schema_history\" select 9999, '9999', \"description\", \"type\", \"script\","
                        + " \"checksum\", \"installed_by\", \"installed_on\", 0, true from \"flyway_schema_history\""
                        + " where \"version\" = '2'",
                "drop table \"flyway_schema_history\""
            })
    void whatWasDoneOtherwiseIsNot(String change) throws SQLException {
        try (var database = BothDatabases.freshH2();
                var connection = database.dataSource().getConnection();
                var statement = connection.createStatement()) {
            statement.execute(change);
            assertThat(MigrationLog.isWhole(connection)).isFalse();
        }
    }

    private Path byTheLibrary() {
        Path other = folder.resolve("library");
        Flyway.configure()
                .dataSource(url(other), "", "")
                .locations("classpath:migrations")
                .load()
                .migrate();
        return other;
    }

    private static List<String> script(Path folder) throws SQLException {
        try (var connection = DriverManager.getConnection(url(folder), "", "");
                var statement = connection.createStatement();
                var rows = statement.executeQuery("script nosettings")) {
            var lines = new ArrayList<String>();
            while (rows.next()) {
                rows.getString(1)
                        .lines()
                        .map(line -> line.replaceFirst("TIMESTAMP '[^']*', \\d+, TRUE", "at its time"))
                        .forEach(lines::add);
            }
            return lines;
        }
    }

    private static String url(Path folder) {
        return "jdbc:h2:file:" + folder.toAbsolutePath().resolve("groundbass");
    }
}
