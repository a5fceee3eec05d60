package groundbass.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** A zip, whole to its end. No name in it ever becomes a path. */
final class ZipSource implements Source {
    private final ZipFile zip;
    private final SortedMap<String, ZipEntry> files = new TreeMap<>();
    private final int passedOver;

    /**
     * @throws java.util.zip.ZipException where it is no zip, or its end is missing
     * @throws java.io.EOFException where its end is spoiled so that it says more than there is
     */
    ZipSource(Path file) throws IOException {
        this.zip = new ZipFile(file.toFile());
        int strange = 0;
        var entries = zip.entries();
        while (entries.hasMoreElements()) {
            var entry = entries.nextElement();
            if (Names.isOurs(entry.getName())) {
                files.put(entry.getName(), entry);
            } else if (!entry.isDirectory()) {
                strange++;
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
        var entry = files.get(name);
        if (entry == null) {
            throw new NoSuchFileException(name);
        }
        return zip.getInputStream(entry);
    }

    @Override
    public int passedOver() {
        return passedOver;
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
