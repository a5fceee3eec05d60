package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DatabaseTest {
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
}
