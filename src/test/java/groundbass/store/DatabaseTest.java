package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Types;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DatabaseTest {
    private static final String INSERT = "insert into audit (at, who, what, detail)"
            + " values (timestamp with time zone '2026-03-02 09:00:00+00', :who, :what, :detail)";

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void migratesFromNothing(Database database) throws IOException {
        try (database;
                var migrations = Files.list(Path.of("migrations"))) {
            int applied = database.jdbi()
                    .withHandle(h -> h.select("select count(*) from \"flyway_schema_history\" where \"success\""
                                    + " and \"version\" is not null")
                            .mapTo(Integer.class)
                            .one());
            assertThat(applied).isPositive().isEqualTo((int) migrations.count());
        }
    }

    /** What is bound may be a letter or an address, and a fault is logged with all that it says. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatAStatementWasGivenIsNotToldWhereItFails(Database database) {
        try (database) {
            assertThatThrownBy(() -> database.jdbi().useHandle(handle -> handle.createUpdate(INSERT)
                            .bind("who", "ada@example.org")
                            .bindNull("what", Types.VARCHAR)
                            .bind("detail", "Dear Ada")
                            .execute()))
                    .satisfies(fault -> assertThat(told(fault)).doesNotContain("ada@", "Dear Ada"));
            assertThatThrownBy(() -> database.jdbi().useHandle(handle -> {
                        var batch = handle.prepareBatch(INSERT);
                        batch.bind("who", "ada@example.org")
                                .bindNull("what", Types.VARCHAR)
                                .bind("detail", "Dear Ada")
                                .add();
                        batch.execute();
                    }))
                    .satisfies(fault -> assertThat(told(fault)).doesNotContain("ada@", "Dear Ada"));
        }
    }

    /** H2's documentation of {@code SET WRITE_DELAY}: 0 writes each commit at once. */
    @Test
    void onceItsTablesAreMadeEveryCommitIsWrittenAtOnce(@TempDir Path folder) {
        for (String start : List.of("first", "second")) {
            try (var database = Database.embedded(folder)) {
                var delays = database.jdbi()
                        .withHandle(handle -> handle.select("select setting_value from information_schema.settings"
                                        + " where setting_name = 'WRITE_DELAY'")
                                .mapTo(Integer.class)
                                .list());
                assertThat(delays).as(start).containsOnly(0);
            }
        }
    }

    /** With ours: `merge` is in PostgreSQL since 15 (its release notes). */
    @Test
    void aServerThatIsTooOldIsToldFromOneThatWillDo() {
        assertThat(FirstConnection.isTooOld("PostgreSQL", 14)).isTrue();
        assertThat(FirstConnection.isTooOld("PostgreSQL", 15)).isFalse();
        assertThat(FirstConnection.isTooOld("H2", 2)).isFalse();
    }

    private static String told(Throwable fault) {
        var told = new StringWriter();
        fault.printStackTrace(new PrintWriter(told));
        return told.toString();
    }
}
