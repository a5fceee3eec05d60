package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DatabaseTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void migratesFromNothing(Database database) {
        try (database) {
            int applied = database.jdbi()
                    .withHandle(h -> h.select("select count(*) from \"flyway_schema_history\" where \"success\"")
                            .mapTo(Integer.class)
                            .one());
            assertThat(applied).isPositive();
        }
    }
}
