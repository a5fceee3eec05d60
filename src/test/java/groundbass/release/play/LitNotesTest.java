package groundbass.release.play;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.score.Line;
import groundbass.signal.SampleRate;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the page is told to light is drawn on the page. */
class LitNotesTest {
    static List<Path> demoLines() throws IOException {
        try (var files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d+)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("demoLines")
    void everyEventThatIsPlayedIsDrawn(Path file) throws IOException {
        var line = LineText.read(Files.readString(file)).line();
        for (double width : List.of(48.0, 110.0)) {
            String drawn = new Sheets(Messages.of(Locale.ENGLISH)).svg(line, width, "x-");
            assertThat(played(line).filter(event -> !isDrawn(event, drawn))).isEmpty();
        }
    }

    private static Stream<PlayManifest.Event> played(Line line) {
        return new PlayTimes(SampleRate.CD, Performance.of(line))
                .bars().stream().flatMap(bar -> bar.events().stream());
    }

    /** As a note, or in a bar that is drawn as a sign of repetition. */
    private static boolean isDrawn(PlayManifest.Event event, String drawn) {
        String note = "data-bar=\"%d\" data-at=\"%s\" data-to-bar=\"%d\" data-to=\"%s\""
                .formatted(event.bar(), event.at(), event.toBar(), event.to());
        String whole = "data-bar=\"%d\" data-at=\"0\" data-to-bar=\"%d\"".formatted(event.bar(), event.bar() + 1);
        return drawn.contains("class=\"event\" " + note) || drawn.contains("class=\"event\" " + whole);
    }
}
