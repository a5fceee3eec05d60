package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import groundbass.groove.GrooveLibrary;
import groundbass.linetext.LineText;
import groundbass.score.Technique;
import groundbass.theory.Quality;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SoundcheckTest {
    private static final Pattern SOURCE = Pattern.compile("src=\"([^\"]+)\"");
    private static final Path SEED_DATA = Path.of("seed-data");

    @TempDir
    private Path folder;

    @Test
    void everyExampleOnThePageIsHeard() throws Exception {
        assertThat(run("render", "--soundcheck", folder.toString())).isZero();
        String page = Files.readString(folder.resolve("index.html"));
        var sources =
                SOURCE.matcher(page).results().map(found -> found.group(1)).toList();
        int chords = 3 + Quality.values().length;
        assertThat(sources).hasSize(23 + GrooveLibrary.all().size() + chords).doesNotHaveDuplicates();
        for (var source : sources) {
            short[] samples = samples(folder.resolve(source));
            assertThat(loudest(samples)).as(source).isGreaterThan(1_000);
            // it begins at once: the count-in is left out
            assertThat(loudest(Arrays.copyOf(samples, 2 * 44_100))).as(source).isGreaterThan(500);
        }
        assertThat(page)
                .contains("Start quietly")
                .doesNotContain("soundcheck.")
                .doesNotContain("http:")
                .doesNotContain("https:");
    }

    @Test
    void everyTechniqueIsHeard() {
        var heard = Soundcheck.techniqueLines().stream()
                .map(text -> LineText.read(text).line())
                .flatMap(line -> line.bars().stream())
                .flatMap(bar -> bar.notes().stream())
                .flatMap(note -> note.pluck().stream());
        assertThat(heard).contains(Technique.values());
    }

    @Test
    void everyDemoLineRendersAsSound() throws Exception {
        var lines = demoLines();
        var arguments =
                new ArrayList<>(List.of("render", "--out", folder.toString(), "--only", "wav", "--tempo", "200"));
        for (int i = 0; i < lines.size(); i++) {
            var copy = folder.resolve("line-" + i + ".txt");
            Files.copy(lines.get(i), copy);
            arguments.add(copy.toString());
        }
        assertThat(run(arguments.toArray(String[]::new))).isZero();
        for (int i = 0; i < lines.size(); i++) {
            assertThat(loudest(samples(folder.resolve("line-" + i + ".wav"))))
                    .as("%s", lines.get(i))
                    .isGreaterThan(3_000);
        }
    }

    private static List<Path> demoLines() throws IOException {
        try (Stream<Path> files = Files.walk(SEED_DATA)) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d+)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    private static int run(String... arguments) {
        return Main.commandLine(Map.of()).execute(arguments);
    }

    private static short[] samples(Path file) throws Exception {
        try (var in = AudioSystem.getAudioInputStream(file.toFile())) {
            var bytes = ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
            var samples = new short[bytes.remaining() / 2];
            bytes.asShortBuffer().get(samples);
            return samples;
        }
    }

    private static int loudest(short[] samples) {
        int loudest = 0;
        for (short sample : samples) {
            loudest = Math.max(loudest, Math.abs(sample));
        }
        return loudest;
    }
}
