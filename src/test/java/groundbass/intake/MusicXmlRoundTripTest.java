package groundbass.intake;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.musicxml.CompressedMusicXml;
import groundbass.musicxml.MusicXmlFile;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Our own files come back as the line that they were made of. */
class MusicXmlRoundTripTest {
    private static final int LINES = Integer.getInteger("intake.lines", 300);

    static List<Path> demo() throws IOException {
        try (var files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    static Brought brought(byte[] file) {
        return (Brought) Intake.read(file, Optional.empty());
    }

    private static Line line(Path file) throws IOException {
        return LineText.read(file.toString(), Files.readString(file)).line();
    }

    private static void same(Line line, Line back, String name) {
        var expected = Survives.of(line, back);
        var unnamed = Survives.unnamed(back);
        assertThat(LineText.print(unnamed)).as(name).isEqualTo(LineText.print(expected));
        assertThat(unnamed).as(name).isEqualTo(expected);
        assertThat(Survives.names(back)).as(name).isEqualTo(Survives.names(line));
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoComesBack(Path file) throws IOException {
        var line = line(file);
        var back = brought(CompressedMusicXml.of(MusicXmlFile.of(line)));
        same(line, back.line(), file.toString());
        assertThat(back.notices()).isEmpty();
    }

    @Test
    void linesOfEveryKindComeBack() {
        int notes = 0;
        for (long seed = 1; seed <= LINES; seed++) {
            var line = RandomLines.line(seed);
            if (line.bars().stream().allMatch(bar -> bar.notes().isEmpty())) {
                continue;
            }
            var back = brought(MusicXmlFile.of(line)).line();
            same(line, back, "seed " + seed);
            notes += back.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
        }
        assertThat(notes).isGreaterThan(1_000);
    }
}
