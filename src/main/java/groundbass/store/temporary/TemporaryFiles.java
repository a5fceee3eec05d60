package groundbass.store.temporary;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Files and folders for as long as this process runs, for its user alone where the system knows users. Whoever made one
 * deletes it; the folder that holds them, and what a killed process leaves there, goes when another makes its first. Thread-safe.
 */
public final class TemporaryFiles {
    /** One for the whole process: what tells others that it lives is a lock of the process. */
    private static TemporaryFolder own;

    private TemporaryFiles() {}

    private static synchronized Path own() throws IOException {
        own = TemporaryFolder.standing(own, Path.of(System.getProperty("java.io.tmpdir")));
        return own.path();
    }

    /** A new file, empty. */
    public static Path file() throws IOException {
        return Files.createTempFile(own(), "", "");
    }

    /** A new folder, empty. */
    public static Path folder() throws IOException {
        return Files.createTempDirectory(own(), "");
    }
}
