package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.SettableClock;
import groundbass.web.Site;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.ArrayList;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartFailureTest {
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

    @Test
    void aFaultOfOursIsNotExplainedAway() {
        assertThat(StartFailure.advice(new IllegalStateException("ours"), Config.local(data, 0)))
                .isEmpty();
    }

    @Test
    void partsCloseInReverseEvenWhenOneFailsAndAlsoWhenTheyComeLate() {
        var closed = new ArrayList<String>();
        var open = new Closing();
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
