package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.checks.SlipSet.Outcome;
import groundbass.identity.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Keeps the sets as they were frozen, and what is found in them today. What was found at first stands beside them. */
class PlantedSlipsTest {
    /** What each set keeps of what is found today; the aim is 0.9 (README.md beside the sets). */
    private static final double FOUND = 0.83;

    private static final double PUT_RIGHT = 0.45;

    static List<String> digests() throws IOException {
        return Files.readAllLines(SlipSet.SETS.resolve("digests.sha256"));
    }

    static List<SlipSet> sets() {
        return SlipSet.all();
    }

    @Test
    void aFrozenSetIsNotEdited() throws IOException {
        try (var files = Files.walk(SlipSet.SETS, 2)) {
            assertThat(digests().stream().map(digest -> digest.split(" +")[1]))
                    .hasSizeGreaterThan(40)
                    .containsExactlyInAnyOrderElementsOf(files.filter(Files::isRegularFile)
                            .map(file -> SlipSet.SETS.relativize(file).toString())
                            .filter(name -> name.startsWith("set-"))
                            .toList());
        }
        for (String digest : digests()) {
            String[] parts = digest.split(" +");
            byte[] file = Files.readAllBytes(SlipSet.SETS.resolve(parts[1]));
            assertThat(Sha256.of(file).hex()).as(parts[1]).isEqualTo(parts[0]);
        }
    }

    @ParameterizedTest
    @MethodSource("sets")
    void mostSlipsAreFound(SlipSet set) {
        var outcomes = set.outcomes();
        Map<String, List<Outcome>> byKind = outcomes.stream()
                .collect(Collectors.groupingBy(each -> each.slip().kind(), TreeMap::new, Collectors.toList()));
        byKind.forEach((kind, each) -> System.out.printf(
                "%s, %s: %d found, %d put right, of %d%n",
                set.folder().getFileName(), kind, found(each), putRight(each), each.size()));
        System.out.printf(
                "%s: %d found, %d put right, of %d%n",
                set.folder().getFileName(), found(outcomes), putRight(outcomes), outcomes.size());
        assertThat(outcomes).hasSizeGreaterThanOrEqualTo(30);
        assertThat((double) found(outcomes) / outcomes.size()).isGreaterThanOrEqualTo(FOUND);
        assertThat((double) putRight(outcomes) / outcomes.size()).isGreaterThanOrEqualTo(PUT_RIGHT);
    }

    @ParameterizedTest
    @MethodSource("sets")
    void ofLinesAsTheyAreMeantHardlyAnythingIsSaid(SlipSet set) {
        var clean = set.clean();
        var said = clean.entrySet().stream()
                .flatMap(each -> Checks.of(SlipSet.read(each.getValue()).line()).stream()
                        .map(finding -> each.getKey() + " " + finding.position() + " " + finding.code()))
                .toList();
        assertThat(clean).hasSizeGreaterThanOrEqualTo(10);
        assertThat(said).hasSizeLessThanOrEqualTo(clean.size() / 10);
    }

    private static long found(List<Outcome> outcomes) {
        return outcomes.stream().filter(Outcome::found).count();
    }

    private static long putRight(List<Outcome> outcomes) {
        return outcomes.stream().filter(Outcome::putRight).count();
    }
}
