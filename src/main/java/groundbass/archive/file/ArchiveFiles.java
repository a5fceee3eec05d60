package groundbass.archive.file;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.SortedSet;

/** Files by names such as {@code 01-night-ferry/line.txt}, wherever they lie. A name is only ever looked up. */
public interface ArchiveFiles extends Closeable {
    /** All that have the form of {@link ArchiveNames#isOurs}, not to be changed. */
    SortedSet<String> names();

    /** @throws java.nio.file.NoSuchFileException where there is no such file */
    InputStream open(String name) throws IOException;

    /** How many files have other names, and are passed over. */
    int passedOver();
}
