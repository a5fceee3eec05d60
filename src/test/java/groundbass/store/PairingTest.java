package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.identity.Sha256;
import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** A folder of files and a database that are strangers to each other must never be opened together. */
class PairingTest {
    private static final byte[] ABC = "abc".getBytes(StandardCharsets.US_ASCII);

    @TempDir
    Path folder;

    private BlobFolder files;

    @BeforeEach
    void open() throws IOException {
        files = new BlobFolder(folder, SettableClock.at("2030-03-01T12:00:00Z"));
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFirstStartMakesOneIdentityAndLaterStartsFindIt(Database database) throws IOException {
        try (database) {
            check(database, Set.of());
            assertThat(Files.readString(folder.resolve("database.id"))).isEqualTo(identity(database) + "\n");
            var named = files.put(ABC).sha256();
            check(database, Set.of(named));
            check(database, Set.of());
        }
    }

    /** A disk that is not mounted leaves an empty place: nothing in it is missing, and nothing is to be made there. */
    @Test
    void anEmptyPlaceWhereTheFolderWasIsNoFolder() throws IOException {
        try (var database = BothDatabases.freshH2()) {
            var named = files.put(ABC).sha256();
            check(database, Set.of(named));
            Path away = Files.move(folder, folder.resolveSibling("away"));
            Files.createDirectories(folder.resolve("incoming"));
            Files.createDirectories(folder.resolve("unnamed"));
            assertThatThrownBy(() -> files.open(named)).isInstanceOf(FilesAway.class);
            assertThatThrownBy(() -> files.exists(named)).isInstanceOf(FilesAway.class);
            assertThatThrownBy(() -> files.verify(named)).isInstanceOf(FilesAway.class);
            assertThatThrownBy(() -> files.put(ABC)).isInstanceOf(FilesAway.class);
            assertThatThrownBy(files::tryWriting).isInstanceOf(FilesAway.class);
            assertThatThrownBy(() -> files.sweep(every -> true)).isInstanceOf(FilesAway.class);
            assertThat(files.missed()).as("nothing is to be made again").isEmpty();
            try (var left = Files.walk(folder)) {
                assertThat(left.filter(Files::isRegularFile)).isEmpty();
            }
            Files.delete(folder.resolve("incoming"));
            Files.delete(folder.resolve("unnamed"));
            Files.delete(folder);
            Files.move(away, folder);
            assertThat(files.open(named)).hasBinaryContent(ABC);
        }
    }

    @Test
    void anInstallationFromBeforeTheIdentityIsTakenOver() throws IOException {
        try (var database = BothDatabases.freshH2()) {
            check(database, Set.of(files.put(ABC).sha256(), Sha256.of(new byte[1])));
            assertThat(Files.readString(folder.resolve("database.id"))).isEqualTo(identity(database) + "\n");
        }
    }

    @Test
    void aDatabaseFromABackupOfThatTimeTakesTheFoldersIdentity() throws IOException {
        var named = files.put(ABC).sha256();
        Files.writeString(folder.resolve("database.id"), "fromthefolder\n");
        try (var database = BothDatabases.freshH2()) {
            check(database, Set.of(named));
            assertThat(identity(database)).isEqualTo("fromthefolder");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEmptyDatabaseOverFilesIsRefused(Database database) throws IOException {
        try (database) {
            files.put(ABC);
            assertRefused(database, Set.of(), "unknown to this database");
        }
    }

    @Test
    void alsoWhereTheFolderHasBeenPairedBefore() throws IOException {
        try (var owner = BothDatabases.freshH2();
                var empty = BothDatabases.freshH2()) {
            check(owner, Set.of());
            files.put(ABC);
            assertRefused(empty, Set.of(), "unknown to this database");
        }
    }

    @Test
    void anotherSitesDatabaseIsRefused() throws IOException {
        try (var mine = BothDatabases.freshH2();
                var other = BothDatabases.freshH2()) {
            check(mine, Set.of());
            other.jdbi().useHandle(h -> h.execute("insert into setting values ('store.identity', 'another')"));
            var named = files.put(ABC).sha256();
            assertRefused(other, Set.of(named), "another database");
            check(mine, Set.of(named));
        }
    }

    @Test
    void aFolderWithoutTheFilesThatTheDatabaseNamesIsRefused() {
        try (var database = BothDatabases.freshH2()) {
            assertRefused(database, Set.of(Sha256.of(ABC)), "are gone");
            assertThat(folder.resolve("database.id")).doesNotExist();
        }
    }

    private void assertRefused(Database database, Set<Sha256> named, String why) {
        assertThatThrownBy(() -> check(database, named))
                .isInstanceOf(CannotOpen.class)
                .hasMessageContainingAll(why, folder.toString(), "--data", "--database-url", "database.id");
    }

    private void check(Database database, Set<Sha256> named) throws IOException {
        new Pairing(database.jdbi(), files).check(named);
    }

    private static String identity(Database database) {
        Jdbi jdbi = database.jdbi();
        return jdbi.withHandle(h -> h.select("select chosen from setting where name = 'store.identity'")
                .mapTo(String.class)
                .one());
    }
}
