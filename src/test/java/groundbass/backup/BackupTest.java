package groundbass.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.upload.UploadRepository;
import groundbass.catalog.upload.Uploads;
import groundbass.identity.Sha256;
import groundbass.release.Releases;
import groundbass.release.care.NamedFiles;
import groundbass.store.Blob;
import groundbass.store.BlobFolder;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Clob;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A site into a file and back: every kind of value, both kinds of database, files that broke off or were spoiled. */
class BackupTest {
    private static final byte[] SHEET = "a sheet with some sounds".getBytes(StandardCharsets.UTF_8);
    private static final Instant EXACT = Instant.parse("2026-02-28T23:59:59.123456Z");

    @TempDir
    Path folder;

    private BlobFolder files(String name) throws IOException {
        return new BlobFolder(folder.resolve(name), Clock.systemUTC());
    }

    private static Backup backup(Database database, BlobFolder files) {
        var jdbi = database.jdbi();
        var clock = Clock.systemUTC();
        var uploads =
                new Uploads(jdbi, new UploadRepository(jdbi), new Episodes(jdbi), files, new Audit(jdbi, clock), clock);
        return new Backup(database, files, new NamedFiles(jdbi, new Releases(jdbi), uploads), clock);
    }

    /** A site with a row of every kind of column, and values that text forms like to spoil. */
    private static void fill(Database database, Sha256 sheet) {
        var fixture = new CatalogFixture(database);
        var series = fixture.series.id().value();
        database.jdbi().useHandle(handle -> {
            handle.execute(
                    "insert into setting (name, chosen) values ('odd', ?)",
                    "quote \" back \\ line\nend \u00df \ud834\udd1e \u2028 {}");
            handle.execute("insert into series_rhythm values (?, date '2024-02-29', '17:00', 2)", series);
            handle.execute("insert into series_style values (?, 'slap=S', true, false, 'a4', 'all', true)", series);
            handle.execute(
                    "insert into episode (id, series_id, number, slug, title, level, summary, created_at)"
                            + " values ('abcdefgh23456789', ?, 1, 'one', 'One', 'beginner', '', ?)",
                    series,
                    EXACT.atOffset(ZoneOffset.ofHours(5)));
            handle.execute(
                    "insert into upload (id, educator_id, episode_id, original_name, media_type, byte_count, sha256,"
                            + " facts, created_at) values ('upload2345678923', ?, 'abcdefgh23456789', 'x.wav',"
                            + " 'audio/wav', 9007199254740993, ?, '{}', ?)",
                    fixture.owner.value(),
                    sheet.hex(),
                    EXACT.atOffset(ZoneOffset.UTC));
            handle.execute(
                    "insert into scheduled_tasks (task_name, task_instance, task_data, execution_time, picked, version)"
                            + " values ('build', '1', ?, ?, false, 1)",
                    new byte[] {0, -1, 10, 127},
                    EXACT.atOffset(ZoneOffset.UTC));
            handle.execute(
                    "insert into tries (name_hash, whole_at) values ('left out', ?)", EXACT.atOffset(ZoneOffset.UTC));
        });
    }

    private Path written(Database database, BlobFolder files) throws IOException {
        var out = new ByteArrayOutputStream();
        backup(database, files).writeTo(out);
        return Files.write(folder.resolve("site.zip"), out.toByteArray());
    }

    /** Every row of every table as its database tells it, without what a backup leaves out. */
    private static Map<String, Set<Map<String, Object>>> rows(Database database) {
        var all = new HashMap<String, Set<Map<String, Object>>>();
        for (String table : database.tables()) {
            if (!Backup.LEFT_OUT.contains(table)) {
                all.put(
                        table,
                        database.jdbi()
                                .withHandle(handle -> Set.copyOf(handle.createQuery("select * from " + table)
                                        .map((row, ctx) -> comparable(row))
                                        .list())));
            }
        }
        return all;
    }

    private static Map<String, Object> comparable(ResultSet row) throws SQLException {
        var values = new HashMap<String, Object>();
        var names = row.getMetaData();
        for (int i = 1; i <= names.getColumnCount(); i++) {
            String name = names.getColumnName(i).toLowerCase(Locale.ROOT);
            int type = names.getColumnType(i);
            boolean instant = type == Types.TIMESTAMP || type == Types.TIMESTAMP_WITH_TIMEZONE;
            Object value = instant ? row.getObject(i, OffsetDateTime.class) : row.getObject(i);
            values.put(name, plain(value, row, i));
        }
        return values;
    }

    private static Object plain(Object value, ResultSet row, int column) throws SQLException {
        if (value instanceof OffsetDateTime time) {
            return time.toInstant();
        }
        if (value instanceof Number number) {
            return number.longValue();
        }
        if (value instanceof byte[] bytes) {
            return Arrays.toString(bytes);
        }
        return value instanceof Clob ? row.getString(column) : String.valueOf(value);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSiteComesBackOnTheOtherKindOfDatabaseRowForRow(Database from) throws IOException {
        try (from) {
            var files = files("from");
            Blob sheet = files.put(SHEET);
            fill(from, sheet.sha256());
            var file = written(from, files);
            var other = files("to");
            try (var backup = BackupFile.open(file);
                    var to = BothDatabases.otherThan(from, from.migration())) {
                backup.verify();
                new Restore(backup).into(to, other);
                assertThat(rows(to)).isEqualTo(rows(from));
                assertThat(rows(to).get("setting")).isNotEmpty();
                int tries = to.jdbi().withHandle(handle -> handle.createQuery("select count(*) from tries")
                        .mapTo(Integer.class)
                        .one());
                assertThat(tries).isZero();
                try (var in = other.open(sheet.sha256())) {
                    assertThat(in.readAllBytes()).isEqualTo(SHEET);
                }
                // the next numbered row follows those that came in
                var audit = new Audit(to.jdbi(), Clock.systemUTC());
                int before = audit.latest(100).size();
                audit.note("somebody", AuditWord.BACKUP_MADE, "");
                assertThat(audit.latest(100)).hasSize(before + 1);
            }
        }
    }

    /** What is written between the rows of one table and those of the next belongs to the moment after. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void rowsAreOfOneMomentWhateverIsWrittenMeanwhile(Database database) throws Exception {
        try (database) {
            var files = files("from");
            fill(database, files.put(SHEET).sha256());
            var going = new AtomicBoolean(true);
            var writer = new Thread(() -> {
                // one row in an early table, then one in a late table: a later moment has as many of both
                for (int i = 0; going.get(); i++) {
                    String name = "pair" + i;
                    database.jdbi().useTransaction(handle -> {
                        handle.execute("insert into setting (name, chosen) values (?, '')", name);
                        handle.execute(
                                "insert into refused_address (email, refused_at, reply) values (?, now(), '')", name);
                    });
                }
            });
            writer.start();
            try {
                for (int i = 0; i < 10; i++) {
                    var rows = written(database, files);
                    assertThat(lines(rows, "setting", "pair")).isEqualTo(lines(rows, "refused_address", "pair"));
                }
            } finally {
                going.set(false);
                writer.join();
            }
            assertThat(lines(written(database, files), "setting", "pair")).isPositive();
        }
    }

    private static long lines(Path backup, String table, String holding) throws IOException {
        try (var zip = new ZipFile(backup.toFile());
                var in = zip.getInputStream(zip.getEntry("tables/" + table + ".jsonl"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> line.contains(holding))
                    .count();
        }
    }

    /** The tables are read off the migrations; the database itself tells the same. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void noTableIsLeftOutThatTheDatabaseHas(Database database) throws SQLException {
        try (database;
                var connection = database.dataSource().getConnection();
                var found = connection
                        .createStatement()
                        .executeQuery("select lower(table_name) from information_schema.tables"
                                + " where table_schema = current_schema and table_type = 'BASE TABLE'")) {
            var tables = new TreeSet<String>();
            while (found.next()) {
                tables.add(found.getString(1));
            }
            assertThat(tables).contains("flyway_schema_history");
            tables.remove("flyway_schema_history");
            assertThat(database.tables()).containsExactlyInAnyOrderElementsOf(tables);
        }
    }

    @Test
    void whatIsMissingIsNamedAndTheRestIsThere() throws IOException {
        try (var database = BothDatabases.freshH2()) {
            var gone = Sha256.of(new byte[] {1});
            fill(database, gone);
            var file = written(database, files("from"));
            try (var backup = BackupFile.open(file)) {
                backup.verify();
                assertThat(backup.manifest().missing()).containsExactly(gone.hex());
                assertThat(backup.manifest().files()).isZero();
                assertThat(backup.manifest().rows()).isPositive();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 0.9, 0.999})
    void aFileThatBrokeOffIsRefused(double part) throws IOException {
        byte[] whole = Files.readAllBytes(someBackup());
        var half = Files.write(folder.resolve("half.zip"), Arrays.copyOf(whole, (int) (whole.length * part)));
        assertThatThrownBy(() -> BackupFile.open(half))
                .isInstanceOf(NotRestorable.class)
                .hasMessageContaining("not a whole backup");
    }

    /** What is not noticed lies where nothing is read from: times of entries, the words for people. */
    @Test
    void everySpoiledByteIsNoticedOrHarmless() throws IOException {
        byte[] whole = Files.readAllBytes(someBackup());
        var sound = contents(folder.resolve("site.zip"));
        int noticed = 0;
        for (int at = 0; at < whole.length; at += 97) {
            byte[] spoiled = whole.clone();
            spoiled[at] ^= 0x55;
            var file = Files.write(folder.resolve("spoiled.zip"), spoiled);
            try (var backup = BackupFile.open(file)) {
                backup.verify();
                assertThat(contents(file)).as("byte %d", at).isEqualTo(sound);
            } catch (NotRestorable expected) {
                noticed++;
            }
        }
        assertThat(noticed).isPositive();
    }

    /** Rows and stored files, by their names. */
    private static Map<String, String> contents(Path backup) throws IOException {
        var contents = new HashMap<String, String>();
        try (var zip = new ZipFile(backup.toFile())) {
            for (var entry : Collections.list(zip.entries())) {
                if (entry.getName().matches("manifest\\.json|(tables|files)/.+")) {
                    try (var in = zip.getInputStream(entry)) {
                        contents.put(
                                entry.getName(), Sha256.of(in.readAllBytes()).hex());
                    }
                }
            }
        }
        return contents;
    }

    @Test
    void anotherKindOfFileIsRefused() throws IOException {
        var text = Files.writeString(folder.resolve("notes.txt"), "no backup");
        assertThatThrownBy(() -> BackupFile.open(text)).isInstanceOf(NotRestorable.class);
        assertThatThrownBy(() -> BackupFile.open(folder.resolve("nowhere.zip")))
                .isInstanceOf(NotRestorable.class)
                .hasMessageContaining("There is no file");
    }

    private Path someBackup() throws IOException {
        try (var database = BothDatabases.freshH2()) {
            var files = files("some");
            fill(database, files.put(SHEET).sha256());
            return written(database, files);
        }
    }
}
