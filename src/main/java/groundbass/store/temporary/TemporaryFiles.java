package groundbass.store.temporary;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Files and folders for as long as this process runs, for its user alone where the system knows users. Whoever made one
 * deletes it; what a process leaves that is killed goes when another makes its first. Thread-safe.
 */
public final class TemporaryFiles {
    /** One for the whole process: what tells others that it lives is a lock of the process. */
    private static final class Own {
        static final TemporaryFolder FOLDER = made();

        private static TemporaryFolder made() {
            try {
                return TemporaryFolder.in(Path.of(System.getProperty("java.io.tmpdir")));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private TemporaryFiles() {}

    /** A new file, empty. */
    public static Path file() throws IOException {
        return Files.createTempFile(Own.FOLDER.path(), "", "");
    }

    /** A new folder, empty. */
    public static Path folder() throws IOException {
        return Files.createTempDirectory(Own.FOLDER.path(), "");
    }
}
