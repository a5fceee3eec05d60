package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One room writes into a table, so that what its rows promise can be read in one place; rooms above may read them. */
class TableRoomsTest {
    private static final Path CODE = Path.of("src/main/java/groundbass");
    private static final Pattern TABLE = Pattern.compile("create table (\\w+)");
    private static final Pattern DROPPED = Pattern.compile("(?m)^drop table (\\w+)");

    /** Whose rows a library writes. */
    private static final Set<String> LIBRARIES = Set.of("scheduled_tasks");

    static Stream<String> tables() throws IOException {
        var tables = new TreeSet<String>();
        var dropped = new TreeSet<String>();
        try (var files = Files.list(Path.of("migrations"))) {
            files.forEach(file -> {
                TABLE.matcher(text(file)).results().forEach(found -> tables.add(found.group(1)));
                DROPPED.matcher(text(file)).results().forEach(found -> dropped.add(found.group(1)));
            });
        }
        tables.removeAll(dropped);
        return tables.stream().filter(table -> !LIBRARIES.contains(table));
    }

    @ParameterizedTest
    @MethodSource("tables")
    void isWrittenInOneRoom(String table) throws IOException {
        var writing = Pattern.compile("(insert into |update |delete from |new Place\\(\")" + table + "\\b");
        try (var files = Files.walk(CODE)) {
            var rooms = files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> writing.matcher(text(file)).find())
                    .map(Path::getParent)
                    .collect(Collectors.toSet());
            assertThat(rooms).as(table).hasSize(1);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
