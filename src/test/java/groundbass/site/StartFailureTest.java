package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.SettableClock;
import groundbass.web.Site;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartFailureTest {
    // FIPS 180-2, appendix B.1
    private static final String ABC_SHA256 = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    private final SettableClock clock = SettableClock.at(Site.START);

    @TempDir
    Path data;

    @Test
    void aTakenPortIsNamedWithTheFlagThatHelps() throws IOException {
        try (var taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            var config = Config.local(data, taken.getLocalPort());
            var failure = Assertions.catchThrowable(() -> Groundbass.start(config, clock));
            assertThat(StartFailure.advice(failure, config).orElseThrow())
                    .contains(String.valueOf(taken.getLocalPort()), "--port");
        }
    }

    @Test
    void aFolderInUseIsNamedWithTheFlagThatHelps() {
        // what the embedded database says to a second process, from memory
        var locked = new IllegalStateException("Database may be already in use: \"groundbass.mv.db\"");
        var config = Config.local(data, 0);
        assertThat(StartFailure.advice(new RuntimeException(locked), config).orElseThrow())
                .contains(data.toString(), "--data");
    }

    /** Started twice by mistake: the one that runs is named, and goes on. */
    @Test
    void aSecondServerOnAFolderIsToldWhichHasItSinceWhenAndWhatToDo() {
        var config = Config.local(data, 0);
        try (var first = Groundbass.start(config, clock)) {
            var failure = Assertions.catchThrowable(() -> Groundbass.start(config, clock));
            assertThat(StartFailure.advice(failure, config).orElseThrow())
                    .contains(
                            data.toString(),
                            "process " + ProcessHandle.current().pid() + " on ",
                            "since " + Site.START,
                            "--data",
                            "--database-url");
            first.database().tryWriting();
        }
        Groundbass.start(config, clock).close(); // whoever has ended holds nobody up
    }

    @Test
    void filesWithoutTheirDatabaseAreNamedAndStay() throws IOException {
        Path file = data.resolve("files").resolve("ba").resolve(ABC_SHA256);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "abc");
        var config = Config.local(data, 0);
        var failure = Assertions.catchThrowable(() -> Groundbass.start(config, clock));
        assertThat(StartFailure.advice(failure, config).orElseThrow()).contains(data.toString(), "unknown", "--data");
        assertThat(file).exists();
    }

    @Test
    void aFaultOfOursIsNotExplainedAway() {
        assertThat(StartFailure.advice(new IllegalStateException("ours"), Config.local(data, 0)))
                .isEmpty();
    }

    @Test
    void partsCloseInReverseEvenWhenOneFailsAndAlsoWhenTheyComeLate() {
        var closed = new ArrayList<String>();
        var open = new Closer();
        open.add(() -> closed.add("database"));
        open.add(() -> {
            throw new IOException("stuck");
        });
        open.add(() -> closed.add("web"));
        open.close();
        open.add(() -> closed.add("late"));
        assertThat(closed).containsExactly("web", "database", "late");
    }
}
