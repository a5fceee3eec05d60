package groundbass.archive.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A folder. Links in it are not followed, so that nothing outside it is read. */
public final class FolderSource extends ListedSource<Path> {
    private static final int DEPTH = 6;

    /** The folder may lie in another file system, such as a jar's. */
    public FolderSource(Path folder) throws IOException {
        try (var walk = Files.walk(folder, DEPTH)) {
            for (Path file : (Iterable<Path>) walk.filter(Files::isRegularFile)::iterator) {
                if (Files.isSymbolicLink(file)) {
                    continue;
                }
                String name = folder.relativize(file).toString().replace('\\', '/');
                if (ArchiveNames.isOurs(name)) {
                    list(name, file);
                } else {
                    passOver();
                }
            }
        }
    }

    @Override
    InputStream open(Path file) throws IOException {
        return Files.newInputStream(file);
    }

    @Override
    public void close() {
        // a folder is not held open
    }
}
