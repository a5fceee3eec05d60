package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class CheckpointerTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyDatabaseCanBeFlushed(Database database) {
        try (database) {
            assertThatCode(database::flush).doesNotThrowAnyException();
        }
    }

    @Test
    void oneFailureDoesNotEndIt() {
        var tries = new AtomicInteger();
        try (var checkpointer = Checkpointer.start(() -> {
            tries.incrementAndGet();
            throw new IllegalStateException("disk full");
        })) {
            checkpointer.runOnce();
            checkpointer.runOnce();
        }
        assertThat(tries.get()).isGreaterThanOrEqualTo(2);
    }

    @Test
    void onlyADatabaseThatWasWrittenToIsFlushed(@TempDir Path folder) {
        // INFORMATION_SCHEMA.SETTINGS, "info.FILE_WRITE": the H2 manual's count of writes to the file
        var jdbi = Jdbi.create("jdbc:h2:file:" + folder.resolve("written") + ";WRITE_DELAY=0");
        try (var open = jdbi.open()) {
            open.execute("create table note (text varchar(10))");
            var flush = new H2Flush(jdbi);
            assertThat(flush.ifWritten()).as("first look").isTrue();
            flush.ifWritten(); // what the first flush wrote by itself came after its count
            assertThat(flush.ifWritten()).as("nothing written").isFalse();
            open.execute("insert into note values ('a')");
            assertThat(flush.ifWritten()).as("a row written").isTrue();
            flush.ifWritten();
            assertThat(flush.ifWritten()).as("nothing written since").isFalse();
        }
    }

    @Test
    void theEmbeddedDatabaseKeepsWhatWasCommitted(@TempDir Path folder) {
        try (var database = Database.embedded(folder)) {
            database.jdbi().useHandle(h -> h.execute("insert into setting values ('a', 'b')"));
            database.flush();
        }
        try (var database = Database.embedded(folder)) {
            String chosen = database.jdbi().withHandle(h -> h.select("select chosen from setting where name = 'a'")
                    .mapTo(String.class)
                    .one());
            assertThat(chosen).isEqualTo("b");
        }
    }
}
