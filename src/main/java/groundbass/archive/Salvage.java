package groundbass.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipInputStream;

/**
 * What can still be read of a zip whose end is missing: its files from the beginning on, put aside under numbers in a
 * folder of their own until this is closed. The file that broke off is not among them.
 */
final class Salvage implements Source {
    /** As much as this is unpacked at most, whatever the zip promises. */
    private static final long MOST_BYTES = 20_000_000_000L;

    private static final int MOST_FILES = 200_000;
    private static final int PIECE = 1 << 16;

    private final Path aside;
    private final SortedMap<String, Path> files = new TreeMap<>();
    private int passedOver;

    Salvage(Path zip) throws IOException {
        this.aside = Files.createTempDirectory("groundbass-salvage");
        try (var in = new ZipInputStream(Files.newInputStream(zip))) {
            putAside(in, Math.min(MOST_BYTES, Files.size(zip) * ArchiveLimits.MOST_UNPACKED));
        } catch (IOException | IllegalArgumentException end) { // this is where it broke off
            if (files.isEmpty()) {
                close();
            }
        }
    }

    private void putAside(ZipInputStream in, long most) throws IOException {
        long left = most;
        for (var entry = in.getNextEntry(); entry != null && files.size() < MOST_FILES; entry = in.getNextEntry()) {
            if (!Names.isOurs(entry.getName())) {
                passedOver += entry.isDirectory() ? 0 : 1;
                continue;
            }
            Path file = aside.resolve(Integer.toString(files.size()));
            left -= copy(in, file, left);
            in.closeEntry(); // where its checksum is wrong, this throws
            files.put(entry.getName(), file);
        }
    }

    private static long copy(InputStream in, Path file, long most) throws IOException {
        long copied = 0;
        try (var out = Files.newOutputStream(file)) {
            byte[] piece = new byte[PIECE];
            for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                copied += read;
                if (copied > most) {
                    throw new IOException("more than is unpacked");
                }
                out.write(piece, 0, read);
            }
        }
        return copied;
    }

    boolean isEmpty() {
        return files.isEmpty();
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
