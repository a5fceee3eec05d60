package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
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
    private static final Set<String> FOREIGN = Set.of("Instant", "Clock", "Handle", "NotFoundResponse");

    /** What stands between two backquotes, and in it a class with one of its members, or a call of what that gave. */
    private static final Pattern CODE = Pattern.compile("`([^`\\n]+)`");

    private static final Pattern MEMBER = Pattern.compile("\\b([A-Z]\\w*)((?:\\.\\w+(?:\\([^()]*\\))?)+)");

    private static Map<String, Path> ours() {
        return Stream.of("src/main/java", "src/test/java")
                .flatMap(root -> walk(Path.of(root)))
                .filter(path -> path.toString().endsWith(".java") && !path.endsWith("package-info.java"))
                .collect(Collectors.toMap(DeveloperGuideTest::name, path -> path, (one, other) -> one));
    }

    private static String name(Path path) {
        return path.getFileName().toString().replace(".java", "");
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
        named.removeAll(ours.keySet());
        assertThat(named).isEmpty();
    }

    /** A chain of calls is taken for one of its first class, which gives itself. */
    @Test
    void everyMemberThatItNamesIsThere() throws IOException {
        var ours = ours();
        var named = CODE.matcher(Files.readString(GUIDE))
                .results()
                .flatMap(code -> MEMBER.matcher(code.group(1)).results())
                .filter(found -> ours.containsKey(found.group(1)))
                .flatMap(found -> Stream.of(found.group(2)
                                .replaceAll("\\([^()]*\\)", "")
                                .substring(1)
                                .split("\\."))
                        .map(member -> Map.entry(found.group(1), member)))
                .filter(found -> !found.getValue().equals("class"))
                .distinct()
                .toList();
        assertThat(named).hasSizeGreaterThan(10).allMatch(member -> isIn(ours.get(member.getKey()), member.getValue()));
    }

    private static boolean isIn(Path source, String member) {
        try {
            return Pattern.compile("\\b" + member + "\\b")
                    .matcher(Files.readString(source))
                    .find();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
