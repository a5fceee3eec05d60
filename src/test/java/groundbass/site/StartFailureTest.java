package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.Database;
import groundbass.store.SettableClock;
import groundbass.web.Site;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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

    /** The embedded database itself says so, whatever holds its file. */
    @Test
    void aFolderInUseIsNamedWithTheFlagThatHelps() throws IOException {
        Database.embedded(data).close();
        var config = Config.local(data, 0);
        try (var file = FileChannel.open(data.resolve("groundbass.mv.db"), StandardOpenOption.WRITE)) {
            file.lock();
            var failure = Assertions.catchThrowable(() -> Database.embedded(data));
            assertThat(StartFailure.isInUse(failure)).isTrue();
            assertThat(StartFailure.advice(failure, config).orElseThrow()).contains(data.toString(), "--data");
        }
    }

    @Test
    void aFolderThatCannotBeMadeIsNamedWithTheFlagThatHelps() throws IOException {
        Path file = Files.createFile(data.resolve("a-file"));
        var config = Config.local(file.resolve("below"), 0);
        var failure = Assertions.catchThrowable(() -> Groundbass.start(config, clock));
        assertThat(StartFailure.advice(failure, config).orElseThrow()).contains(file.toString(), "--data");
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
