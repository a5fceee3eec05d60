package groundbass.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was acknowledged is there after {@code kill -9}. {@link KillRun} does the same many times, on both databases and both stores. */
class KilledTest {
    private static final int KILLS = 2;
    /** Lives of different length, so that the kills strike at different moments. */
    private static final Duration LIFE = Duration.ofMillis(300);

    @Test
    void nothingAcknowledgedIsLost(@TempDir Path folder) throws Exception {
        var site = Site.in(folder);
        var acknowledged = new ArrayList<Acknowledged>();
        try (var killing = new Killing();
                var burners = new Burners(2)) {
            burners.start();
            for (int i = 1; i <= KILLS; i++) {
                acknowledged.addAll(killing.kill(site, LIFE.multipliedBy(i)));
                try (var witness = Witness.of(site)) {
                    assertThat(witness.lost(acknowledged)).isEmpty();
                    assertThat(witness.halfDone()).isEmpty();
                }
            }
        }
        assertThat(acknowledged).extracting(Acknowledged::kind).contains(Kind.values());
    }
}
