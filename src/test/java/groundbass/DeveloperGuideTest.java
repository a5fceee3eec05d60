package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The guide for contributors speaks of classes and files that are there. */
class DeveloperGuideTest {
    private static final Path GUIDE = Path.of("DEVELOPERS.md");
    private static final Pattern TYPE = Pattern.compile("`([A-Z][a-z]+[A-Za-z]*)[^`]*`");
    private static final Pattern FILE =
            Pattern.compile("(?:`|\\]\\()((?:src|templates|seed-data)/[\\w./-]+|[A-Z]+\\.md)(?:`|\\))");

    /** The language's and the libraries' own. */
    private static final Set<String> FOREIGN = Set.of("Instant", "Clock", "Handle", "RowMapper", "NotFoundResponse");

    private static Set<String> ours() {
        return Stream.of("src/main/java", "src/test/java")
                .flatMap(root -> walk(Path.of(root)))
                .map(path -> path.getFileName().toString())
                .filter(name -> name.endsWith(".java"))
                .map(name -> name.substring(0, name.length() - ".java".length()))
                .collect(Collectors.toUnmodifiableSet());
    }

    private static Stream<Path> walk(Path root) {
        try (var paths = Files.walk(root)) {
            return paths.toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyClassThatItNamesIsThere() throws IOException {
        var ours = ours();
        var named = TYPE.matcher(Files.readString(GUIDE))
                .results()
                .map(name -> name.group(1))
                .filter(name -> !FOREIGN.contains(name))
                .collect(Collectors.toSet());
        assertThat(named).hasSizeGreaterThan(50);
        named.removeAll(ours);
        assertThat(named).isEmpty();
    }

    @Test
    void everyFileThatItNamesIsThere() throws IOException {
        var named = FILE.matcher(Files.readString(GUIDE))
                .results()
                .map(name -> Path.of(name.group(1)))
                .toList();
        assertThat(named).hasSizeGreaterThan(5).allMatch(Files::exists);
    }
}
