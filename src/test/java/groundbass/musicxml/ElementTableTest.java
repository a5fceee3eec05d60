package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Arrival;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of what is written for what, in {@code src/main/docs/musicxml.md}, is kept. */
class ElementTableTest {
    private static final Path TABLE = Path.of("src/main/docs/musicxml.md");
    private static final Pattern CODE = Pattern.compile("`([^`]+)`");

    /** What is typed, and the elements that stand for it. */
    record Row(String typed, List<String> elements) {}

    static List<Row> rows() throws IOException {
        String text = Files.readString(TABLE);
        var notes = text.substring(text.indexOf("## Notes"), text.indexOf("## Around"));
        return notes.lines()
                .filter(line -> line.startsWith("| ") && line.contains("`"))
                .map(line -> line.split("\\|"))
                .map(cells -> new Row(codes(cells[2]).get(0), codes(cells[3])))
                .toList();
    }

    private static List<String> codes(String cell) {
        return CODE.matcher(cell)
                .results()
                .map((MatchResult code) -> code.group(1))
                .toList();
    }

    private static String written(String typed) {
        var reading = LineText.read("table.line", "style m\nbar 1\n1-4 E3 m, " + typed + "\n");
        assertThat(reading.problems()).isEmpty();
        return new String(MusicXmlFile.of(reading.line()), StandardCharsets.UTF_8);
    }

    private static long count(String text, String element) {
        return Pattern.compile("<" + element + "[ />]").matcher(text).results().count();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theElementsOfARowAreWritten(Row row) {
        var without = written("E9 m");
        var with = written(row.typed());
        assertThat(row.elements()).isNotEmpty().allSatisfy(element -> assertThat(count(with, element))
                .as(element)
                .isGreaterThan(element.matches("other-play|pluck|step|alter") ? 0 : count(without, element)));
        assertThat(MusicXmlSchema.fault(with.getBytes(StandardCharsets.UTF_8))).isEmpty();
    }

    @Test
    void everyWordHasARow() throws IOException {
        var typed = rows().stream()
                .flatMap(row -> Stream.of(row.typed().split("[ ,]+")))
                .toList();
        assertThat(typed)
                .containsAll(
                        Arrays.stream(Technique.values()).map(Technique::word).toList())
                .containsAll(Arrays.stream(Mark.values()).map(Mark::word).toList())
                .containsAll(Arrays.stream(Arrival.Kind.values())
                        .map(Arrival.Kind::word)
                        .toList());
    }
}
