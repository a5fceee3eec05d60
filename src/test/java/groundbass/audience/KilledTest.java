package groundbass.audience;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.Database;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.io.TempDir;

/** A record that was acknowledged is there after {@code kill -9}: a real process, really killed, under load. */
class KilledTest {
    /** More acknowledgements are waited for on each run, so that the kill strikes at different moments. */
    private static final int ACKNOWLEDGED_PER_RUN = 400;

    @RepeatedTest(5)
    void noAcknowledgedDownloadIsLost(RepetitionInfo run, @TempDir Path folder) throws Exception {
        List<String> acknowledged = killAfter(ACKNOWLEDGED_PER_RUN * run.getCurrentRepetition(), folder);
        try (var database = Database.embedded(folder)) {
            Map<String, DownloadState> kept = states(database);
            assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(ACKNOWLEDGED_PER_RUN);
            assertThat(acknowledged)
                    .allSatisfy(line -> assertThat(isKept(line, kept)).as(line).isTrue());
        }
    }

    private static boolean isKept(String line, Map<String, DownloadState> kept) {
        String id = line.substring(line.indexOf(' ') + 1);
        if (line.startsWith("begun ")) return kept.containsKey(id);
        return kept.get(id) == DownloadState.COMPLETE;
    }

    private static Map<String, DownloadState> states(Database database) {
        var states = new HashMap<String, DownloadState>();
        var audience = new Audience(database);
        audience.all().forEach(download -> states.put(download.id().value(), download.state()));
        return states;
    }

    /** Everything the process acknowledged until it died, the kill coming after so many lines. */
    private static List<String> killAfter(int lines, Path folder) throws IOException, InterruptedException {
        Process process = start(folder);
        var acknowledged = new ArrayList<String>();
        try (BufferedReader output = process.inputReader()) {
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                if (isWhole(line)) acknowledged.add(line);
                // by its handle: killing the Process itself would close the pipe and what still lies in it
                if (acknowledged.size() == lines) process.toHandle().destroyForcibly();
            }
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.waitFor()).as("killed by signal 9").isEqualTo(128 + 9);
        return acknowledged;
    }

    /** The last line may be cut by the kill; it was then not acknowledged. */
    private static boolean isWhole(String line) {
        return line.matches("(begun|complete) [a-z0-9]{16}");
    }

    private static Process start(Path folder) throws IOException {
        String java = ProcessHandle.current().info().command().orElse("java");
        return new ProcessBuilder(
                        java,
                        "-Xmx128m",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        DownloadsUnderLoad.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
