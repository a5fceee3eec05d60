package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The demo's lines get no remarks and wild ones get many, and none of them breaks. The demo is ours as the rules are, so
 * this keeps both in step; whether a rule is right, {@link RulesTest} asks.
 */
class DemoLinesTest {
    static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("demo")
    void aFinishedLineIsLeftAlone(Path file) throws IOException {
        var line = LineText.read(file.toString(), Files.readString(file)).line();
        assertThat(Checks.of(line)).isEmpty();
    }

    @Test
    void everyFindingOfAnyLineCanBeSaidAndItsRepairsApplied() {
        int findings = 0;
        int repairs = 0;
        for (long seed = 1; seed <= 150; seed++) {
            var line = RandomLines.line(seed);
            for (var finding : Checks.of(line)) {
                findings++;
                repairs += finding.repairs().size();
                for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
                    var messages = Messages.of(locale);
                    assertThat(messages.say(finding.reason()))
                            .as("seed " + seed)
                            .doesNotContain("{");
                    assertThat(messages.has(finding.severity().messageKey())).isTrue();
                    finding.repairs().forEach(repair -> assertThat(messages.say(repair.label()))
                            .isNotBlank());
                }
                assertThat(finding.notes())
                        .as("seed %d, %s", seed, finding)
                        .allMatch(note -> line.bar(note.position().bar()).notes().stream()
                                .anyMatch(other ->
                                        other.onset().equals(note.position().at()) && other.string() == note.string()));
            }
        }
        assertThat(findings).isGreaterThan(100);
        assertThat(repairs).isGreaterThan(10);
    }
}
