package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import groundbass.OutsideTools;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.EpisodeId;
import groundbass.web.desk.Sent;
import groundbass.web.desk.Studio;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked example of http-interface.md, run in its order as it stands there. */
class WorkedExampleTest {
    private static final Pattern BLOCK = Pattern.compile("(?ms)^```sh\n(.*?)^```$");

    @TempDir
    Path folder;

    @Test
    void theExampleDoesWhatItSays() throws IOException, InterruptedException {
        OutsideTools.here().need("curl");
        String page = Files.readString(Path.of("src/main/docs/http-interface.md"));
        String script =
                BLOCK.matcher(page).results().map(block -> block.group(1)).collect(Collectors.joining("\n"));
        assertThat(script).contains("/promise", "/recordings", "/draft/line");
        Files.write(folder.resolve("band.wav"), Sent.wav());
        Files.writeString(folder.resolve("week.sh"), "set -euo pipefail\n" + script);
        try (var studio = new Studio()) {
            var programs = new LetIn(studio, new Description());
            run(studio.site.address(), programs.token(studio.site.educator(), "Week", ProgramScope.values()));
            var lesson = json("lesson.json");
            var document = studio.document(
                    studio.episode(new EpisodeId(lesson.path("id").asText())));
            assertThat(document.mainLine().text()).contains("1 2 3 4  A5, A5, E5, A5");
            assertThat(document.backingTracks()).hasSize(1);
            assertThat(json("standing.json").path("state").asText()).isEqualTo("promised");
            assertThat(json("promise.json").path("at").asText()).isEqualTo("2026-02-06T17:00:00Z"); // CET
            assertThat(json("release.json").path("lesson")).isEqualTo(lesson.path("id"));
        }
    }

    private void run(String site, String token) throws IOException, InterruptedException {
        var process = new ProcessBuilder("bash", "week.sh").directory(folder.toFile());
        process.environment().put("SITE", site);
        process.environment().put("TOKEN", token);
        var running = process.redirectErrorStream(true).start();
        running.getOutputStream().close();
        String said = new String(running.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(running.waitFor()).as(said).isZero();
        assertThat(said).doesNotContain(token);
    }

    private JsonNode json(String name) throws IOException {
        return new ObjectMapper().readTree(Files.readString(folder.resolve(name)));
    }
}
