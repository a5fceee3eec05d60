package groundbass.archive.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeMap;

/**
 * A source that lists its files once, by their names.
 *
 * @param <T> what it opens a file by
 */
abstract class ListedSource<T> implements ArchiveFiles {
    private final TreeMap<String, T> files = new TreeMap<>();
    private final SortedSet<String> names = Collections.unmodifiableSortedSet(files.navigableKeySet());
    private int passedOver;

    /** Lists a file under a name of ours; of two with one name, the later. */
    final void list(String name, T file) {
        files.put(name, file);
    }

    /** Counts a file that has another name. */
    final void passOver() {
        passedOver++;
    }

    /** Opens a file that was listed. */
    abstract InputStream open(T file) throws IOException;

    @Override
    public final SortedSet<String> names() {
        return names;
    }

    @Override
    public final InputStream open(String name) throws IOException {
        var file = files.get(name);
        if (file == null) {
            throw new NoSuchFileException(name);
        }
        return open(file);
    }

    @Override
    public final int passedOver() {
        return passedOver;
    }
}
