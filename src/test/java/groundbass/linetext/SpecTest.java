package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.problem.Mistake;
import groundbass.linetext.source.LimitsTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs the numbered examples of the specification in {@code spec/line-text}: {@code input / . / expected} between lines
 * of {@code ----}. Expected values were worked out by hand from the rules that the specification states.
 */
class SpecTest {
    private static final List<String> CHAPTERS = List.of(
            "1-header", "2-bars", "3-counts", "4-events", "5-words", "6-copies", "7-repeats", "8-typing", "9-slips");

    record Example(String chapter, int number, String input, String expected) {
        @Override
        public String toString() {
            return chapter + " " + number;
        }
    }

    static Stream<Example> examples() {
        return CHAPTERS.stream().flatMap(chapter -> examples(chapter).stream());
    }

    private static List<Example> examples(String chapter) {
        var parts = text("/spec/line-text/" + chapter + ".txt").split("(?m)^----\\n");
        var examples = new ArrayList<Example>();
        for (int i = 1; i < parts.length; i += 2) {
            int dot = parts[i].startsWith(".\n") ? 0 : parts[i].indexOf("\n.\n") + 1;
            String input = parts[i].substring(0, dot).replace("<TAB>", "\t").replace("<BOM>", "\uFEFF");
            examples.add(new Example(
                    chapter, i / 2 + 1, input, parts[i].substring(dot + 2).stripTrailing()));
        }
        return examples;
    }

    private static String text(String resource) {
        try (var stream = SpecTest.class.getResourceAsStream(resource)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void readsAsTheSpecificationSays(Example example) {
        assertThat(Dump.of(LineText.read(example.input()))).as(example.input()).isEqualTo(example.expected());
    }

    /** By the key of its sentence, since several share a code. */
    @Test
    void everyMistakeHasAnExample() {
        var made = examples()
                .flatMap(example -> LineText.read(example.input()).problems().stream())
                .map(problem -> problem.message().key())
                .collect(Collectors.toSet());
        var every = Arrays.stream(Mistake.values())
                .filter(mistake -> !LimitsTest.MISTAKES.contains(mistake))
                .map(Mistake::messageKey);
        assertThat(made).containsAll(every.toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void readsTheSameWithOtherLineEnds(Example example) {
        String crlf = example.input().replace("\n", "\r\n");
        assertThat(Dump.of(LineText.read(crlf))).as(example.input()).isEqualTo(example.expected());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void whatIsReadPrintsAndReadsBack(Example example) {
        var line = LineText.read(example.input()).line();
        var again = LineText.read(LineText.print(line));
        assertThat(again.problems()).isEmpty();
        assertThat(again.line()).isEqualTo(line);
    }
}
