package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.BothDatabases;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MetricsTest {
    /** Its name: Micrometer's reference, "Disk". */
    @Test
    void theDiskIsToldWhereSomethingOfTheSiteLiesOnIt(@TempDir Path data) {
        try (var database = BothDatabases.freshH2();
                var some = Metrics.of(Optional.of(data), database)) {
            assertThat(some.text()).contains("disk_free_bytes");
        }
        try (var database = BothDatabases.freshH2();
                var none = Metrics.of(Optional.empty(), database)) {
            assertThat(none.text()).contains("jvm_memory_used_bytes").doesNotContain("disk_");
        }
    }
}
