package groundbass.walkthrough;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The lines that the demonstration is made of. */
final class Demonstration {
    private Demonstration() {}

    static List<Line> lines() {
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.endsWith("line.txt"))
                    .sorted()
                    .map(Demonstration::line)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Line line(Path file) {
        try {
            return LineText.read(Files.readString(file)).line();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
