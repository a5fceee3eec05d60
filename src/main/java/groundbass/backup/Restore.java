package groundbass.backup;

import groundbass.store.Blobs;
import groundbass.store.Database;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.SQLException;

/** Fills a new site with what a backup holds, which should have been {@link BackupFile#verify verified} before. */
public final class Restore {
    private final BackupFile backup;

    public Restore(BackupFile backup) {
        this.backup = backup;
    }

    /**
     * Puts files and rows in. All rows come in together or none does.
     *
     * @param database new, with the migrations that the backup's database had
     * @param files where stored files go
     * @throws NotRestorable where something in the backup is not what it was when it was written
     */
    public void into(Database database, Blobs files) throws IOException {
        copy(files);
        try {
            database.jdbi().useTransaction(handle -> fill(database, handle.getConnection()));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void copy(Blobs files) throws IOException {
        for (var entry : backup.files()) {
            var expected = backup.digest(entry);
            try (var in = backup.open(entry)) {
                var kept = files.put(in::transferTo);
                if (!kept.sha256().equals(expected)) {
                    throw backup.damaged(entry.getName() + " is not what it was when it was written");
                }
            }
        }
    }

    private void fill(Database database, Connection connection) {
        var known = database.tables();
        for (var table : backup.manifest().tables()) {
            if (!known.contains(table.table()) || Backup.LEFT_OUT.contains(table.table())) {
                throw backup.damaged("it has rows for \"" + table.table() + "\", which no site restores");
            }
            long rows = fill(table, connection);
            if (rows != table.rows()) {
                throw backup.damaged(rows + " of " + table.rows() + " rows of " + table.table() + " are in it");
            }
        }
    }

    private long fill(BackupManifest.Rows rows, Connection connection) {
        try (var in = backup.rows(rows)) {
            return Table.in(connection, rows.table()).readFrom(in, connection);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
