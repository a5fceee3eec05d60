package groundbass.backup;

import groundbass.identity.Sha256;
import groundbass.release.care.NamedFiles;
import groundbass.store.Blobs;
import groundbass.store.Database;
import groundbass.store.OneMoment;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.temporary.Scratch;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.security.DigestOutputStream;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes a running site into one file. All rows are of one instant; the files that they name are copied after it, which is
 * safe, since a stored file never changes and stays for days after its last row is gone. Neither rows nor files are held
 * in memory.
 */
public final class Backup {
    /**
     * What a restored site must not have: open sessions, tokens of programs, links that were given out, counts of tries,
     * servers that were up. Whoever had them
     * signs in anew, and what was ended since does not open again.
     */
    static final Set<String> LEFT_OUT = Set.of(
            "session",
            "sign_in",
            "news_request",
            "preview_link",
            "invitation",
            "password_reset",
            "setup_code",
            "tries",
            "program_token",
            "program_answer",
            "node");

    private static final int FILES_AT_ONCE = 1_000;

    private final Database database;
    private final Blobs files;
    private final NamedFiles named;
    private final Clock clock;

    public Backup(Database database, Blobs files, NamedFiles named, Clock clock) {
        this.database = database;
        this.files = files;
        this.named = named;
        this.clock = clock;
    }

    /** The rows of a table, as they go into the file. */
    private record Spooled(BackupManifest.Rows rows, Scratch text) {}

    /**
     * Writes the backup and leaves the stream open. A stream that breaks off leaves a file that {@link Restore} refuses.
     *
     * @return what is in it
     */
    public BackupManifest writeTo(OutputStream out) throws IOException {
        var spooled = new ArrayList<Spooled>();
        try {
            return writeTo(new ZipOutputStream(out, StandardCharsets.UTF_8), clock.instant(), spool(spooled), spooled);
        } finally {
            for (var table : spooled) {
                table.text().close();
            }
        }
    }

    private BackupManifest writeTo(ZipOutputStream zip, Instant made, List<Sha256> names, List<Spooled> spooled)
            throws IOException {
        write(zip, Entries.READ_ME, entry -> entry.write(Entries.WORDS.getBytes(StandardCharsets.UTF_8)));
        for (var table : spooled) {
            write(zip, Entries.rows(table.rows().table()), table.text()::copyTo);
        }
        var copied = new Copied();
        for (var sha256 : names) {
            copy(sha256, zip, copied);
        }
        var manifest = new BackupManifest(
                BackupManifest.FORM,
                database.migration(),
                made.toString(),
                spooled.stream().map(Spooled::rows).toList(),
                copied.files,
                copied.bytes,
                copied.missing);
        write(zip, Entries.MANIFEST, manifest::writeTo);
        zip.finish();
        zip.flush();
        return manifest;
    }

    /**
     * Sets the rows aside in one transaction, which sees the database as it was at its beginning and does not wait for
     * whoever takes the file.
     *
     * @return the files that they name
     */
    private List<Sha256> spool(List<Spooled> spooled) throws IOException {
        try {
            return database.jdbi().inTransaction(OneMoment.LEVEL, handle -> {
                for (String table : database.tables()) {
                    if (!LEFT_OUT.contains(table)) {
                        spooled.add(spool(table, handle.getConnection()));
                    }
                }
                return names();
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Spooled spool(String name, Connection connection) {
        try {
            var text = Scratch.open();
            try {
                return spool(name, connection, text);
            } catch (IOException | RuntimeException e) { // nobody else knows of it yet
                text.close();
                throw e;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Spooled spool(String name, Connection connection, Scratch text) throws IOException {
        var digest = Sha256.digest();
        long rows = text.write(out -> write(name, connection, new DigestOutputStream(out, digest)));
        return new Spooled(
                new BackupManifest.Rows(name, rows, Sha256.finish(digest).hex()), text);
    }

    private static long write(String name, Connection connection, OutputStream out) throws IOException {
        try {
            return Table.in(connection, name).writeTo(out, connection);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<Sha256> names() {
        var all = new ArrayList<Sha256>();
        for (var next = named.after("", FILES_AT_ONCE); !next.isEmpty(); ) {
            all.addAll(next);
            next = named.after(all.get(all.size() - 1).hex(), FILES_AT_ONCE);
        }
        return all;
    }

    private static final class Copied {
        private long files;
        private long bytes;
        private final List<String> missing = new ArrayList<>();
    }

    private void copy(Sha256 sha256, ZipOutputStream zip, Copied copied) throws IOException {
        try (var in = files.open(sha256)) {
            zip.setLevel(Deflater.NO_COMPRESSION); // sheets and sounds are as small as they get
            zip.putNextEntry(new ZipEntry(Entries.file(sha256)));
            copied.bytes += in.transferTo(zip);
            copied.files++;
            zip.closeEntry();
        } catch (NoSuchFileException | DamagedFileException e) {
            copied.missing.add(sha256.hex());
        }
    }

    private static void write(ZipOutputStream zip, String name, Blobs.Content content) throws IOException {
        zip.setLevel(Deflater.DEFAULT_COMPRESSION);
        zip.putNextEntry(new ZipEntry(name));
        content.writeTo(zip);
        zip.closeEntry();
    }
}
