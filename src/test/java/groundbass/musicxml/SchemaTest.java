package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every document is valid against the schema of MusicXML 4.0. */
class SchemaTest {
    /** Of random lines; 2,000 of them were valid when the writer was made ({@code -Dmusicxml.lines=2000}). */
    static final int LINES = Integer.getInteger("musicxml.lines", 200);

    static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    static Line line(Path file) throws IOException {
        return LineText.read(file.toString(), Files.readString(file)).line();
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoIsValid(Path file) throws IOException {
        assertThat(MusicXmlSchema.fault(MusicXmlFile.of(line(file)))).isEmpty();
    }

    @Test
    void linesOfEveryKindAreValid() {
        for (long seed = 1; seed <= LINES; seed++) {
            assertThat(MusicXmlSchema.fault(MusicXmlFile.of(RandomLines.line(seed))))
                    .as("seed " + seed)
                    .isEmpty();
        }
    }

    /** So that the schema is known to look: the order of children counts, and so do names and values. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<staff>1</staff>|<stuff>1</stuff>",
                "<pitch>|<staff>1</staff><pitch>",
                "<step>A</step>|<step>H</step>"
            })
    void whatIsNotOfTheFormatIsRefused(String change) throws IOException {
        var document = new String(MusicXmlFile.of(line(demo().get(0))), StandardCharsets.UTF_8);
        String[] parts = change.split("\\|", 2);
        assertThat(document).contains(parts[0]);
        String spoiled = document.replaceFirst(parts[0], parts[1]);
        assertThat(MusicXmlSchema.fault(spoiled.getBytes(StandardCharsets.UTF_8)))
                .isPresent();
    }
}
