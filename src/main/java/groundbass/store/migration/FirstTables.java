package groundbass.store.migration;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;

/**
 * Makes an embedded database where there is none: under another name until it has all its tables, so that a start that is cut
 * short leaves none.
 */
public final class FirstTables {
    private static final String ENDING = ".mv.db";

    private FirstTables() {}

    /** Opens a database by its address. */
    public interface Opening {
        Connection open(String url) throws SQLException;
    }

    /** @param database the file without its ending */
    public static void make(Path database, Opening opening) {
        Path begun = database.resolveSibling(database.getFileName() + ".begun");
        try {
            Files.createDirectories(database.getParent());
            Files.deleteIfExists(file(begun));
            fill(begun, opening);
            Files.move(file(begun), file(database), StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    // no statement goes to the disk by itself: the whole file does, once
    private static void fill(Path begun, Opening opening) throws IOException {
        String url = "jdbc:h2:file:" + begun + ";WRITE_DELAY=1000;MAX_COMPACT_TIME=0";
        try (var connection = opening.open(url)) {
            MigrationLog.make(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("the database cannot be opened", e);
        }
        try (var channel = FileChannel.open(file(begun), StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    private static Path file(Path database) {
        return database.resolveSibling(database.getFileName() + ENDING);
    }
}
