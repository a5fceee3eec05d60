package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of requirements is whole, and speaks of classes and tests that are there. */
class AsvsTableTest {
    private static final Path TABLE = Path.of("src/main/docs/asvs.md");
    /** OWASP ASVS 5.0.0, levels 1 and 2: a number and its level a line. */
    private static final Path NUMBERS = Path.of("src/test/resources/spec/asvs/levels-1-and-2.txt");

    private static final Pattern ROW =
            Pattern.compile("^\\| (V[^|]+) \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\|$");
    private static final Pattern NUMBER = Pattern.compile("V\\d+\\.\\d+\\.\\d+");
    private static final Pattern TYPE = Pattern.compile("`([A-Z][a-z0-9]+[A-Za-z0-9]*)(?:#(\\w+))?`");
    private static final Pattern PATH = Pattern.compile("`((?:src|templates)/[\\w./-]+)`|\\]\\(([\\w-]+\\.md)\\)");
    private static final String NO_TEST = "–";

    /** Whether a state needs a test, may have one, or has none. */
    private static final Map<String, Tested> STATES = Map.of(
            "met", Tested.ALWAYS,
            "not met", Tested.PERHAPS,
            "no test", Tested.NEVER,
            "operator", Tested.NEVER,
            "none here", Tested.NEVER);

    /** The language's own. */
    private static final Set<String> FOREIGN = Set.of("SecureRandom");

    private enum Tested {
        ALWAYS,
        PERHAPS,
        NEVER
    }

    private record Row(List<String> numbers, String state, String how, String test) {
        static Row of(String line) {
            var cells = ROW.matcher(line);
            assertThat(cells.matches()).as(line).isTrue();
            var numbers = Stream.of(cells.group(1).split(", ")).toList();
            return new Row(numbers, cells.group(3), cells.group(4), cells.group(5));
        }
    }

    private static List<Row> rows() {
        return read(TABLE)
                .lines()
                .filter(line -> line.startsWith("| V"))
                .map(Row::of)
                .toList();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every source file of ours by the name of its class. */
    private static Map<String, Path> ours() {
        var ours = new HashMap<String, Path>();
        for (String root : List.of("src/main/java", "src/test/java")) {
            try (var paths = Files.walk(Path.of(root))) {
                paths.filter(path -> path.toString().endsWith(".java"))
                        .forEach(path -> ours.put(path.getFileName().toString().replace(".java", ""), path));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return ours;
    }

    /** In the order of the standard, which counts 70 of level 1 and 183 of level 2. */
    @Test
    void everyRequirementOfBothLevelsHasItsPlaceOnce() {
        var lines = read(NUMBERS).lines().filter(line -> !line.startsWith("#")).toList();
        assertThat(lines).filteredOn(line -> line.endsWith(" 1")).hasSize(70);
        assertThat(lines).filteredOn(line -> line.endsWith(" 2")).hasSize(183);
        var told = rows().stream().flatMap(row -> row.numbers().stream()).toList();
        assertThat(told).allMatch(number -> NUMBER.matcher(number).matches());
        assertThat(told)
                .containsExactlyElementsOf(
                        lines.stream().map(line -> line.split(" ")[0]).toList());
    }

    @Test
    void whatIsCalledMetNamesItsTestAndWhatIsNotTestedNamesNone() {
        for (var row : rows()) {
            var tested = STATES.get(row.state());
            assertThat(tested).as(row.numbers() + " is " + row.state()).isNotNull();
            boolean names = !row.test().equals(NO_TEST);
            if (tested != Tested.PERHAPS) {
                assertThat(names).as(row.numbers() + " is " + row.state()).isEqualTo(tested == Tested.ALWAYS);
            }
        }
    }

    @Test
    void everyClassAndEveryTestThatItNamesIsThere() {
        var ours = ours();
        var missing = new TreeSet<String>();
        var named = TYPE.matcher(read(TABLE)).results().toList();
        assertThat(named).hasSizeGreaterThan(200);
        for (var name : named) {
            if (!isThere(name, ours)) {
                missing.add(name.group());
            }
        }
        assertThat(missing).isEmpty();
    }

    private static boolean isThere(MatchResult name, Map<String, Path> ours) {
        String type = name.group(1);
        if (name.group(2) == null) {
            return FOREIGN.contains(type) || ours.containsKey(type);
        }
        return ours.containsKey(type) && read(ours.get(type)).contains(" void " + name.group(2) + "(");
    }

    /** In the last column stand tests by class and method, and nothing else. */
    @Test
    void theLastColumnNamesTests() {
        var wrong = new ArrayList<String>();
        for (var row : rows()) {
            Stream.of(row.test().split(", "))
                    .filter(test -> !test.equals(NO_TEST) && !test.matches("`[A-Za-z]+Test#\\w+`"))
                    .forEach(wrong::add);
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void everyFileThatItNamesIsThere() {
        var named = PATH.matcher(read(TABLE)).results().toList();
        assertThat(named).hasSizeGreaterThan(5);
        assertThat(named)
                .allMatch(path -> path.group(1) == null
                        ? Files.exists(TABLE.resolveSibling(path.group(2)))
                        : Files.exists(Path.of(path.group(1))));
    }
}
