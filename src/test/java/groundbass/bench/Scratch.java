package groundbass.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;

/** Folders that benchmarks use. */
final class Scratch {
    /** The demo, loaded once for all of them. */
    static final Path SITE = Path.of("target", "bench", "site").toAbsolutePath();

    private Scratch() {}

    static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
