package groundbass.backup;

import groundbass.identity.Sha256;
import groundbass.release.NamedFiles;
import groundbass.store.Blobs;
import groundbass.store.DamagedFileException;
import groundbass.store.Database;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.security.DigestOutputStream;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;

/**
 * Writes a running site into one file. All rows are of one instant; the files that they name are copied after it, which is
 * safe, since a stored file never changes and stays for days after its last row is gone. Neither rows nor files are held in
 * memory.
 */
public final class Backup {
    /**
     * What a restored site must not have: open sessions, links that sign in, counts of tries. Whoever had them signs in
     * anew, and what was ended since does not open again.
     */
    static final Set<String> LEFT_OUT = Set.of("session", "sign_in", "password_reset", "setup_code", "tries");

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

    private record Rows(List<Manifest.Rows> tables, List<Sha256> files) {}

    /**
     * Writes the backup and leaves the stream open. A stream that breaks off leaves a file that {@link Restore} refuses.
     *
     * @return what is in it
     */
    public Manifest writeTo(OutputStream out) throws IOException {
        var made = clock.instant();
        var zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        write(zip, Entries.READ_ME, entry -> entry.write(Entries.WORDS.getBytes(StandardCharsets.UTF_8)));
        var rows = rows(zip);
        var copied = new Copied();
        for (var sha256 : rows.files()) {
            copy(sha256, zip, copied);
        }
        var manifest = new Manifest(
                Manifest.FORM,
                database.migration(),
                made.toString(),
                rows.tables(),
                copied.files,
                copied.bytes,
                copied.missing);
        write(zip, Entries.MANIFEST, manifest::writeTo);
        zip.finish();
        zip.flush();
        return manifest;
    }

    /** Rows and the names of files in one transaction, which sees the database as it was at its beginning. */
    private Rows rows(ZipOutputStream zip) throws IOException {
        try {
            return database.jdbi().inTransaction(TransactionIsolationLevel.SERIALIZABLE, handle -> {
                var tables = new ArrayList<Manifest.Rows>();
                for (String table : database.tables()) {
                    if (!LEFT_OUT.contains(table)) {
                        tables.add(rows(table, handle.getConnection(), zip));
                    }
                }
                return new Rows(tables, names());
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Manifest.Rows rows(String name, Connection connection, ZipOutputStream zip) {
        try {
            var digest = Sha256.digest();
            zip.setLevel(Deflater.DEFAULT_COMPRESSION);
            zip.putNextEntry(new ZipEntry(Entries.rows(name)));
            long rows = Table.in(connection, name).writeTo(new DigestOutputStream(zip, digest), connection);
            zip.closeEntry();
            return new Manifest.Rows(name, rows, Sha256.finish(digest).hex());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
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
