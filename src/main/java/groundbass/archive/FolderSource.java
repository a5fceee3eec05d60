package groundbass.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** A folder. Links in it are not followed, so that nothing outside it is read. */
final class FolderSource implements Source {
    private static final int DEPTH = 6;

    private final SortedMap<String, Path> files = new TreeMap<>();
    private final int passedOver;

    /** The folder may lie in another file system, such as a jar's. */
    FolderSource(Path folder) throws IOException {
        int strange = 0;
        try (var walk = Files.walk(folder, DEPTH)) {
            for (Path file : (Iterable<Path>) walk.filter(Files::isRegularFile)::iterator) {
                if (Files.isSymbolicLink(file)) {
                    continue;
                }
                String name = folder.relativize(file).toString().replace('\\', '/');
                if (Names.isOurs(name)) {
                    files.put(name, file);
                } else {
                    strange++;
                }
            }
        }
        this.passedOver = strange;
    }

    @Override
    public SortedSet<String> names() {
        return Collections.unmodifiableSortedSet(new TreeSet<>(files.keySet()));
    }

    @Override
    public InputStream open(String name) throws IOException {
        var file = files.get(name);
        if (file == null) {
            throw new NoSuchFileException(name);
        }
        return Files.newInputStream(file);
    }

    @Override
    public int passedOver() {
        return passedOver;
    }

    @Override
    public void close() {
        // a folder is not held open
    }
}
