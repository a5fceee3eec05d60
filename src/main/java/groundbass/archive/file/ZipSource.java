package groundbass.archive.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** A zip, whole to its end. No name in it ever becomes a path. */
public final class ZipSource extends ListedSource<ZipEntry> {
    private final ZipFile zip;

    /**
     * @throws java.util.zip.ZipException where it is no zip, or its end is missing
     * @throws java.io.EOFException where its end is spoiled so that it says more than there is
     */
    public ZipSource(Path file) throws IOException {
        this.zip = new ZipFile(file.toFile());
        var entries = zip.entries();
        while (entries.hasMoreElements()) {
            var entry = entries.nextElement();
            if (ArchiveNames.isOurs(entry.getName())) {
                list(entry.getName(), entry);
            } else if (!entry.isDirectory()) {
                passOver();
            }
        }
    }

    @Override
    InputStream open(ZipEntry entry) throws IOException {
        return zip.getInputStream(entry);
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
