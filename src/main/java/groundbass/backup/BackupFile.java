package groundbass.backup;

import com.fasterxml.jackson.core.JacksonException;
import groundbass.identity.Sha256;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** A backup that was made earlier, opened to be looked at or restored. Nothing in it is believed before its digest is. */
public final class BackupFile implements AutoCloseable {
    private static final int LONGEST_MANIFEST = 1 << 26;

    private final Path path;
    private final ZipFile zip;
    private final BackupManifest manifest;

    private BackupFile(Path path, ZipFile zip, BackupManifest manifest) {
        this.path = path;
        this.zip = zip;
        this.manifest = manifest;
    }

    /** @throws NotRestorable where it is no backup, or not a whole one */
    public static BackupFile open(Path path) throws IOException {
        if (!Files.isRegularFile(path)) {
            throw new NotRestorable("There is no file " + path + ".");
        }
        ZipFile zip = zip(path);
        try {
            return new BackupFile(path, zip, manifest(path, zip));
        } catch (IOException | RuntimeException e) {
            zip.close();
            throw e;
        }
    }

    private static ZipFile zip(Path path) throws IOException {
        try {
            return new ZipFile(path.toFile());
        } catch (ZipException | EOFException e) {
            throw new NotRestorable(
                    path + " is not a whole backup: its end is missing, or it is another kind of file. Copy it once"
                            + " more from where it is kept, or take an earlier one.",
                    e);
        }
    }

    private static BackupManifest manifest(Path path, ZipFile zip) throws IOException {
        var entry = zip.getEntry(Entries.MANIFEST);
        if (entry == null || entry.getSize() > LONGEST_MANIFEST) {
            throw new NotRestorable(path + " is no backup of a site: it has no " + Entries.MANIFEST + ".");
        }
        BackupManifest manifest;
        try (var in = zip.getInputStream(entry)) {
            manifest = BackupManifest.read(new ByteArrayInputStream(whole(in, entry)));
        } catch (JacksonException | ZipException | EOFException e) {
            throw new NotRestorable(path + " is no backup of a site: its " + Entries.MANIFEST + " cannot be read.", e);
        }
        if (manifest.form() > BackupManifest.FORM) {
            throw new NotRestorable(
                    path + " was written by a newer version of this program. Restore it with that one.");
        }
        return manifest;
    }

    /** Tables and files have digests in the manifest; it has the checksum of the zip, which nobody else looks at. */
    private static byte[] whole(InputStream in, ZipEntry entry) throws IOException {
        byte[] bytes = in.readAllBytes();
        var checksum = new CRC32();
        checksum.update(bytes);
        if (checksum.getValue() != entry.getCrc()) {
            throw new ZipException("the checksum is another");
        }
        return bytes;
    }

    public BackupManifest manifest() {
        return manifest;
    }

    /**
     * Reads all of it.
     *
     * @throws NotRestorable where something in it is not what it was when it was written
     */
    public void verify() throws IOException {
        try {
            verifyAll();
        } catch (ZipException | EOFException e) {
            throw damaged("some of it cannot be unpacked");
        }
    }

    private void verifyAll() throws IOException {
        for (var table : manifest.tables()) {
            try (var in = rows(table)) {
                in.transferTo(OutputStream.nullOutputStream());
            }
        }
        long found = 0;
        for (var file : files()) {
            try (var in = open(file)) {
                check(Entries.FILES + digest(file).hex(), digest(file), in);
                found++;
            }
        }
        if (found != manifest.files()) {
            throw damaged(found + " of " + manifest.files() + " stored files are in it");
        }
    }

    private void check(String what, Sha256 expected, InputStream in) throws IOException {
        var digest = Sha256.digest();
        try (var read = new DigestInputStream(in, digest)) {
            read.transferTo(OutputStream.nullOutputStream());
        }
        if (!Sha256.finish(digest).equals(expected)) {
            throw damaged(what + " is not what it was when it was written");
        }
    }

    NotRestorable damaged(String how) {
        return new NotRestorable(path + " is damaged: " + how + ". Copy it once more from where it is kept, or take an"
                + " earlier one.");
    }

    /** The rows of a table. Whoever has read them to the end and closes the stream learns whether they are whole. */
    InputStream rows(BackupManifest.Rows table) throws IOException {
        var entry = Optional.ofNullable(zip.getEntry(Entries.rows(table.table())))
                .orElseThrow(() -> damaged("the rows of " + table.table() + " are not in it"));
        var digest = Sha256.digest();
        return new DigestInputStream(zip.getInputStream(entry), digest) {
            private boolean closed;

            @Override
            public void close() throws IOException {
                super.close();
                boolean again = closed;
                closed = true;
                if (!again && !Sha256.finish(digest).hex().equals(table.sha256())) {
                    throw damaged("the rows of " + table.table() + " are not what they were when they were written");
                }
            }
        };
    }

    List<? extends ZipEntry> files() {
        return zip.stream()
                .filter(entry -> entry.getName().startsWith(Entries.FILES))
                .toList();
    }

    Sha256 digest(ZipEntry file) {
        try {
            return new Sha256(file.getName().substring(Entries.FILES.length()));
        } catch (IllegalArgumentException e) {
            throw damaged("\"" + file.getName() + "\" does not belong into it");
        }
    }

    InputStream open(ZipEntry file) throws IOException {
        return zip.getInputStream(file);
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
