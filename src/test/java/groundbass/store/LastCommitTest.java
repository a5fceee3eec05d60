package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is killed leaves the file of its database as it lies there at that moment. */
class LastCommitTest {
    private static final int COMMITS = 60;
    private static final int LONGEST_DETAIL = 2000; // as long as the column; rows of different length leave gaps

    @Test
    void everyCommitIsFoundInTheFileAsItLayAfterIt(@TempDir Path running, @TempDir Path left) throws Exception {
        long seed = System.nanoTime();
        var found = new ArrayList<Integer>();
        try (var database = Database.embedded(running)) {
            // gaps are filled at once instead of after 45 seconds, as in a server that has run for a minute
            database.jdbi().useHandle(handle -> handle.execute("set retention_time 0"));
            var random = new Random(seed);
            for (int commit = 1; commit <= COMMITS; commit++) {
                append(database, random.nextInt(LONGEST_DETAIL));
                found.add(rowsIn(left.resolve("after-" + commit + ".mv.db"), running.resolve("groundbass.mv.db")));
            }
        }
        assertThat(found).as("rows after each commit, seed " + seed).isEqualTo(counting(COMMITS));
    }

    @Test
    void aFileThatWasClosedIsLeftAsItIs(@TempDir Path folder) throws IOException {
        Database.embedded(folder).close();
        Path file = folder.resolve("groundbass.mv.db");
        byte[] closed = Files.readAllBytes(file);
        LastCommit.find(file);
        assertThat(Files.readAllBytes(file)).isEqualTo(closed);
    }

    @Test
    void aFileThatIsNoDatabaseIsLeftToWhoeverOpensIt(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("groundbass.mv.db"), "a letter, not a database");
        LastCommit.find(file);
        assertThat(file).hasContent("a letter, not a database");
    }

    @Test
    void aMissingFileIsNotMade(@TempDir Path folder) {
        Path file = folder.resolve("groundbass.mv.db");
        LastCommit.find(file);
        assertThat(file).doesNotExist();
    }

    @Test
    void aFileInUseIsLeftToItsUser(@TempDir Path folder) {
        try (var database = Database.embedded(folder)) {
            append(database, 1);
            LastCommit.find(folder.resolve("groundbass.mv.db"));
            append(database, 2);
        }
        try (var again = Database.embedded(folder)) {
            int rows = again.jdbi().withHandle(handle -> handle.select("select count(*) from audit")
                    .mapTo(Integer.class)
                    .one());
            assertThat(rows).isEqualTo(2);
        }
    }

    private static void append(Database database, int length) {
        database.jdbi()
                .useHandle(handle -> handle.execute(
                        "insert into audit (at, who, what, detail) values (current_timestamp, 'a', 'b', ?)",
                        "x".repeat(length)));
    }

    private static int rowsIn(Path copy, Path file) throws IOException, SQLException {
        Files.copy(file, copy);
        LastCommit.find(copy);
        String database = copy.toString().replace(".mv.db", "");
        try (var connection = DriverManager.getConnection("jdbc:h2:file:" + database + ";IFEXISTS=TRUE");
                var rows = connection.createStatement().executeQuery("select count(*) from audit")) {
            rows.next();
            return rows.getInt(1);
        }
    }

    private static List<Integer> counting(int last) {
        return IntStream.rangeClosed(1, last).boxed().toList();
    }
}
