package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One room writes into a table, so that what its rows promise can be read in one place; rooms above may read them. */
class TableRoomsTest {
    private static final Path CODE = Path.of("src/main/java/groundbass");
    private static final Pattern TABLE = Pattern.compile("create table (\\w+)");
    private static final Pattern DROPPED = Pattern.compile("(?m)^drop table (\\w+)");

    private static final Pattern WRITING =
            Pattern.compile("(?:insert into |update |delete from |new Place\\(\")(\\w+)");
    private static final Map<String, Set<Path>> WRITERS = writers();

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
    void isWrittenInOneRoom(String table) {
        assertThat(WRITERS.getOrDefault(table, Set.of())).as(table).hasSize(1);
    }

    /** By table the rooms whose code writes into it. */
    private static Map<String, Set<Path>> writers() {
        var writers = new HashMap<String, Set<Path>>();
        try (var files = Files.walk(CODE)) {
            files.filter(file -> file.toString().endsWith(".java"))
                    .forEach(file -> WRITING.matcher(text(file)).results().forEach(found -> writers.computeIfAbsent(
                                    found.group(1), table -> new HashSet<>())
                            .add(file.getParent())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return writers;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
