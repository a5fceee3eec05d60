package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job that is cut short must not take the whole site's database with it. */
class InterruptedTest {
    @Test
    void anInterruptedWriterLeavesTheDatabaseOpen(@TempDir Path folder) throws InterruptedException {
        try (var database = Database.embedded(folder)) {
            for (int round = 0; round < 20; round++) {
                var writer = new Thread(() -> {
                    Thread.currentThread().interrupt();
                    try {
                        write(database);
                    } catch (RuntimeException cutShort) {
                        // what the interrupted one gets is its own affair
                    }
                });
                writer.start();
                writer.join();
            }
            write(database);
            int rows = database.jdbi().withHandle(handle -> handle.select("select count(*) from audit")
                    .mapTo(Integer.class)
                    .one());
            assertThat(rows).isPositive();
        }
    }

    private static void write(Database database) {
        database.jdbi().useHandle(handle -> {
            handle.execute(
                    "insert into audit (at, who, what, detail) values (current_timestamp, 'a', 'b', ?)",
                    "x".repeat(2000));
            database.flush();
        });
    }
}
