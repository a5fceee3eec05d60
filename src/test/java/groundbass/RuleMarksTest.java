package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the code obeys stands in {@code src/main/docs}: each mark leads there, and each rule there is used. */
class RuleMarksTest {
    private static final Path DOCS = Path.of("src/main/docs");
    private static final String NAME = "[a-z0-9]+(?:-[a-z0-9]+)+";
    private static final Pattern RULE = Pattern.compile("^### (.+)\n\n((?s:.+?))(?=^#|\\z)", Pattern.MULTILINE);
    private static final Pattern MARK = Pattern.compile("(?<![-\\w])rule:\\s*(" + NAME + "(?:, " + NAME + ")*|\\S*)");
    private static final Pattern NEXT_COMMENT_LINE = Pattern.compile("\n\\s*(?:\\*|//|#)\\s*");
    private static final Pattern EXHIBIT = Pattern.compile("^rule +(.+)$", Pattern.MULTILINE);

    private static List<Path> files(Predicate<Path> which, String... roots) {
        return Stream.of(roots)
                .flatMap(root -> walk(Path.of(root)))
                .filter(which)
                .sorted()
                .toList();
    }

    private static Stream<Path> walk(Path root) {
        try (var paths = Files.walk(root)) {
            return paths.filter(Files::isRegularFile).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isText(Path file) {
        return Stream.of(".java", ".txt", ".md", ".js", ".css", ".html", ".properties", ".sql", ".tsv", ".line", ".xml")
                .anyMatch(file.toString()::endsWith);
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Each rule by its name, with what stands under it; fails where a name stands twice. */
    private static Map<String, String> rules(String of) {
        var rules = new LinkedHashMap<String, String>();
        for (var file : files(path -> path.getFileName().toString().matches(of), DOCS.toString())) {
            RULE.matcher(read(file)).results().forEach(rule -> assertThat(
                            rules.put(rule.group(1), rule.group(2).strip()))
                    .as(rule.group(1) + " twice")
                    .isNull());
        }
        assertThat(rules).isNotEmpty();
        return rules;
    }

    private static Map<String, String> rules() {
        return rules("(?!README).*\\.md");
    }

    /** Which files cite each name, in comments; the examples of the gallery have a row for it. */
    private static Map<String, List<Path>> cited() {
        var cited = new TreeMap<String, List<Path>>();
        for (var file : files(RuleMarksTest::isText, "src/main/java", "src/main/resources", "src/test")) {
            String text = NEXT_COMMENT_LINE.matcher(read(file)).replaceAll(" ");
            var marks = isMyself(file)
                    ? Stream.<MatchResult>empty()
                    : MARK.matcher(text).results();
            var exhibits =
                    file.endsWith("gallery.txt") ? EXHIBIT.matcher(read(file)).results() : Stream.<MatchResult>empty();
            Stream.concat(marks, exhibits)
                    .flatMap(mark -> Stream.of(mark.group(1).split(", *")))
                    .forEach(name -> cited.computeIfAbsent(name, any -> new ArrayList<>())
                            .add(file));
        }
        return cited;
    }

    private static boolean isMyself(Path file) {
        return file.endsWith("RuleMarksTest.java");
    }

    @Test
    void everyRuleHasANameThatMeansSomethingAndASource() {
        var known = read(DOCS.resolve("sources.md"))
                .lines()
                .filter(row -> row.startsWith("| ") && !row.startsWith("| name") && !row.startsWith("| ---"))
                .map(row -> row.split("\\|")[1].strip())
                .collect(Collectors.toCollection(TreeSet::new));
        known.addAll(List.of("handbooks", "calculated", "common practice", "ours"));
        rules().forEach((name, text) -> {
            assertThat(name).matches(NAME);
            assertThat(text.split("\n\n")[0]).as(name).endsWith(".").doesNotStartWith("Source");
            String source = text.substring(text.lastIndexOf("\n\n") + 2);
            assertThat(source).as(name).startsWith("Source: ").endsWith(".");
            assertThat(known).as(name + " " + source).anyMatch(source::contains);
        });
    }

    @Test
    void everyMarkIsARuleOfOurs() {
        var cited = cited();
        assertThat(cited).hasSizeGreaterThan(100);
        cited.keySet().removeAll(rules().keySet());
        assertThat(cited).isEmpty();
    }

    @Test
    void everyRuleIsObeyedSomewhere() {
        assertThat(rules().keySet()).isSubsetOf(citedBelow("src/main"));
    }

    @Test
    void everyRuleOfEngravingPlayingAndSoundHasATest() {
        assertThat(rules("(engraving-rules|playing-limits|sound-figures)\\.md").keySet())
                .isSubsetOf(citedBelow("src/test"));
    }

    /** The names that some file there cites. */
    private static Set<String> citedBelow(String root) {
        return cited().entrySet().stream()
                .filter(mark -> mark.getValue().stream().anyMatch(file -> file.startsWith(root)))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
