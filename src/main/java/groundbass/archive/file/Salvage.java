package groundbass.archive.file;

import groundbass.store.temporary.TemporaryFiles;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;

/**
 * What can still be read of a zip whose end is missing: its files from the beginning on, put aside under numbers in a
 * folder of their own until this is closed. The file that broke off is not among them.
 */
public final class Salvage extends ListedSource<Path> {
    /** As much as this is unpacked at most, whatever the zip promises. */
    public static final long MOST_BYTES = 20_000_000_000L;

    public static final int MOST_FILES = 200_000;
    private static final int PIECE = 1 << 16;

    private final Path aside;
    private final boolean isCut;
    private long left;

    /** @throws IOException where this machine's disk fails */
    public Salvage(Path zip) throws IOException {
        this(zip, MOST_BYTES, MOST_FILES);
    }

    /** @param bytes of all its files, those that are passed over, too */
    public Salvage(Path zip, long bytes, int most) throws IOException {
        this.left = Math.min(bytes, Files.size(zip) * ArchiveLimits.MOST_UNPACKED);
        this.aside = TemporaryFiles.folder();
        try {
            this.isCut = !putAside(zip, most);
        } catch (IOException | RuntimeException e) {
            close();
            throw e;
        }
    }

    /** @return whether all was taken that can be read */
    private boolean putAside(Path zip, int most) throws IOException {
        try (var in = new ZipInputStream(Files.newInputStream(zip))) {
            int count = 0;
            for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (count == most || !putAside(entry, in, count)) {
                    return false;
                }
                count++;
            }
            return true;
        } catch (ZipException | EOFException | IllegalArgumentException end) { // this is where it broke off
            return true;
        }
    }

    /** A name may occur twice, so files are called by their place in the zip. */
    private boolean putAside(ZipEntry entry, ZipInputStream in, int place) throws IOException {
        if (!ArchiveNames.isOurs(entry.getName())) {
            if (!entry.isDirectory()) {
                passOver();
            }
            return copy(in, OutputStream.nullOutputStream());
        }
        Path file = aside.resolve(Integer.toString(place));
        try (var out = Files.newOutputStream(file)) {
            if (!copy(in, out)) {
                return false;
            }
        }
        in.closeEntry(); // where its checksum is wrong, this throws
        list(entry.getName(), file);
        return true;
    }

    /** @return whether it was no more than may still be unpacked */
    private boolean copy(InputStream in, OutputStream out) throws IOException {
        byte[] piece = new byte[PIECE];
        for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
            left -= read;
            if (left < 0) {
                return false;
            }
            out.write(piece, 0, read);
        }
        return true;
    }

    /** Whether there is more in it than is unpacked of such a zip. */
    public boolean isCut() {
        return isCut;
    }

    public boolean isEmpty() {
        return names().isEmpty();
    }

    @Override
    InputStream open(Path file) throws IOException {
        return Files.newInputStream(file);
    }

    @Override
    public void close() {
        List<Path> all = new ArrayList<>();
        try {
            try (var inside = Files.list(aside)) {
                inside.forEach(all::add);
            }
            for (Path file : all) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(aside);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
