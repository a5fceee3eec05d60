package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import groundbass.Parts;
import groundbass.audience.student.BrowserMark;
import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.identity.Sha256;
import groundbass.site.Config;
import groundbass.site.SiteLock;
import groundbass.store.BlobFolder;
import groundbass.store.Database;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AdminTest {
    private static final String EMAIL = "desk@trial.example";
    private static final String NEW = "quartz lantern boat seven";

    @TempDir
    Path data;

    private record Ran(int code, String out, String err) {}

    private static Ran run(Map<String, String> environment, String typed, String... args) {
        var out = new StringWriter();
        var err = new StringWriter();
        var line = Main.commandLine(environment).setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        var in = System.in;
        try {
            System.setIn(new ByteArrayInputStream(typed.getBytes(Charset.defaultCharset())));
            return new Ran(line.execute(args), out.toString(), err.toString());
        } finally {
            System.setIn(in);
        }
    }

    private Ran admin(String typed, String... args) {
        return run(Map.of("GROUNDBASS_DATA", data.toString()), typed, args);
    }

    private static Educator fill(Database database) {
        var jdbi = database.jdbi();
        var educators = new Educators(jdbi, new Audit(jdbi, Clock.systemUTC()), Clock.systemUTC());
        return educators
                .create("Trial Studio", EMAIL, "a password for trials")
                .result()
                .orElseThrow();
    }

    private static SecretToken signIn(Database database, Educator educator) {
        return Parts.sessions(database.jdbi(), Clock.systemUTC())
                .open(new Person.OfEducator(educator.id()), Device.PHONE);
    }

    @Test
    void aFileThatCannotBeWrittenIsToldInASentence() {
        try (var database = Database.embedded(data)) {
            fill(database);
        }
        var nowhere = data.resolve("none").resolve("site.zip");
        var ran = admin("", "admin", "backup", nowhere.toString());
        assertThat(ran.code()).isNotZero();
        assertThat(ran.err().strip())
                .isEqualTo("The file " + nowhere
                        + ".unfinished cannot be read or written: it, or its folder, is not there.");
    }

    /** What the old key has signed is nothing to the new one. */
    @Test
    void theKeysOfTheSiteAreMadeAnew() {
        String mark;
        try (var database = Database.embedded(data)) {
            fill(database);
            mark = BrowserMark.of(database.jdbi()).next(EMAIL);
            assertThat(BrowserMark.of(database.jdbi()).read(mark, EMAIL)).isPresent();
        }
        var ran = admin("", "admin", "renew-keys");
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("Keys deleted: 1.");
        try (var database = Database.embedded(data)) {
            assertThat(BrowserMark.of(database.jdbi()).read(mark, EMAIL)).isEmpty();
            assertThat(new Audit(database.jdbi(), Clock.systemUTC()).latest(1))
                    .extracting(AuditEntry::what)
                    .containsExactly("keys.renewed");
        }
    }

    @Test
    void theSiteGetsAnotherOwner() {
        try (var database = Database.embedded(data)) {
            fill(database);
            var jdbi = database.jdbi();
            var clock = Clock.offset(Clock.systemUTC(), Duration.ofMinutes(1));
            new Educators(jdbi, new Audit(jdbi, clock), clock).create("Second Studio", "second@trial.example", NEW);
        }
        assertThat(admin("", "admin", "educators").out())
                .containsPattern("desk@trial.*Keeps the site")
                .containsPattern("second@trial.*Begins series of their own");
        assertThat(admin("", "admin", "set-owner", "--email", "nobody@trial.example")
                        .err())
                .contains("admin educators");
        assertThat(admin("", "admin", "set-owner", "--email", "second@trial.example")
                        .code())
                .isZero();
        assertThat(admin("", "admin", "educators").out())
                .containsPattern("desk@trial.*Begins series of their own")
                .containsPattern("second@trial.*Keeps the site");
        assertThat(admin("", "admin", "audit").out()).contains("the operator\tsite.handed");
    }

    @Test
    void aForgottenPasswordIsSetAnewOnAStoppedServer() {
        SecretToken open;
        try (var database = Database.embedded(data)) {
            open = signIn(database, fill(database));
        }
        assertThat(admin("", "admin", "educators").out()).contains(EMAIL, "Trial Studio");
        assertThat(admin("", "admin", "sessions").out()).contains(EMAIL, "Browser on a phone");

        var refused = admin("qwertyuiopas\n", "admin", "reset-password", "--email", EMAIL);
        assertThat(refused.code()).isEqualTo(1);
        assertThat(refused.err()).contains("lists of common passwords").doesNotContain("qwertyuiopas");

        var done = admin(NEW + "\n", "admin", "reset-password", "--email", EMAIL);
        assertThat(done.code()).as(done.err()).isZero();
        assertThat(done.out()).contains("sessions ended: 1").doesNotContain(NEW);
        assertThat(admin("", "admin", "audit").out())
                .contains("the operator\tpassword.reset")
                .doesNotContain(EMAIL);

        try (var database = Database.embedded(data)) {
            var jdbi = database.jdbi();
            var educators = new Educators(jdbi, new Audit(jdbi, Clock.systemUTC()), Clock.systemUTC());
            assertThat(educators.verify(EMAIL, NEW)).isPresent();
            assertThat(educators.verify(EMAIL, "a password for trials")).isEmpty();
            assertThat(Parts.sessions(jdbi, Clock.systemUTC()).find(open)).isEmpty();
        }
    }

    @Test
    void sessionsAreEndedOfWhomeverTheAddressIs() {
        try (var database = Database.embedded(data)) {
            signIn(database, fill(database));
        }
        assertThat(admin("", "admin", "end-sessions", "--email", EMAIL).out()).contains("Sessions ended: 1.");
        assertThat(admin("", "admin", "sessions").out()).isEmpty();
        var nobody = admin("", "admin", "end-sessions", "--email", "nobody@trial.example");
        assertThat(nobody.code()).isEqualTo(1);
        assertThat(nobody.err()).contains("Nobody here has the address nobody@trial.example.");
    }

    @Test
    void aFolderWithoutASiteIsRefusedAndLeftEmpty() {
        var ran = admin("", "admin", "educators");
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("There is no site in the folder " + data).doesNotContain("\tat ");
        assertThat(data).isEmptyDirectory();
    }

    @Test
    void aSiteIsBackedUpLookedAtAndRestored(@TempDir Path elsewhere) throws IOException {
        try (var database = Database.embedded(data)) {
            fill(database);
        }
        String file = elsewhere.resolve("site.zip").toString();
        var made = admin("", "admin", "backup", file);
        assertThat(made.code()).as(made.err()).isZero();
        assertThat(made.out()).contains("rows of", "0 files");
        var again = admin("", "admin", "backup", file);
        assertThat(again.code()).isEqualTo(1);
        assertThat(again.err()).contains("There is a file " + file + " already");

        var looked = admin("", "admin", "restore", file, "--dry-run");
        assertThat(looked.code()).as(looked.err()).isZero();
        assertThat(looked.out()).contains("is whole").containsPattern("(?m)^1\teducator$");

        var full = admin("", "admin", "restore", file);
        assertThat(full.code()).isEqualTo(1);
        assertThat(full.err()).contains("The folder " + data + " is not empty");

        String fresh = elsewhere.resolve("new").toString();
        var restored = admin("", "admin", "restore", file, "--data", fresh);
        assertThat(restored.code()).as(restored.err()).isZero();
        assertThat(admin("", "admin", "educators", "--data", fresh).out()).contains(EMAIL);

        Files.write(elsewhere.resolve("half.zip"), Arrays.copyOf(Files.readAllBytes(Path.of(file)), 2_000));
        var half = admin("", "admin", "restore", elsewhere.resolve("half.zip").toString());
        assertThat(half.code()).isEqualTo(1);
        assertThat(half.err()).contains("is not a whole backup").doesNotContain("\tat ");
    }

    @Test
    void storedFilesAreHeldAgainstTheRowsThatNameThem() throws IOException {
        var whole = Sha256.of(new byte[] {1});
        var gone = Sha256.of(new byte[] {2});
        try (var database = Database.embedded(data)) {
            var educator = fill(database);
            var files = new BlobFolder(data.resolve("files"), Clock.systemUTC());
            files.put(new byte[] {1});
            files.put(new byte[] {3});
            database.jdbi().useHandle(handle -> {
                handle.execute(
                        "insert into series values ('series2345678923', ?, 'low', 'Low', '', 'UTC', now())",
                        educator.id().value());
                handle.execute("insert into episode (id, series_id, number, slug, title, level, summary, created_at)"
                        + " values ('abcdefgh23456789', 'series2345678923', 1, 'one', 'One', 'beginner', '', now())");
                for (var named : List.of(whole, gone)) {
                    handle.execute(
                            "insert into upload (id, educator_id, episode_id, original_name, media_type, byte_count,"
                                    + " sha256, facts, created_at) values (?, ?, 'abcdefgh23456789', 'x.wav',"
                                    + " 'audio/wav', 1, ?, '{}', now())",
                            named.hex().substring(0, 16),
                            educator.id().value(),
                            named.hex());
                }
            });
        }
        var ran = admin("", "admin", "verify");
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.out())
                .contains("whole: 1 files, 1 bytes", "no longer named by any row: 1", "missing or damaged: " + gone)
                .doesNotContain(whole.hex());
    }

    /** As after a new version was laid beside the old one: what only reads does not bring the site up to date. */
    @Test
    void whatOnlyReadsLeavesTheDatabaseOfAnEarlierProgramAsItIs(@TempDir Path elsewhere) {
        Database.newEmbedded(data, "12").close();
        String file = elsewhere.resolve("out.zip").toString();
        for (String[] command : new String[][] {
            {"admin", "backup", file},
            {"admin", "export", "low", "--to", file},
            {"admin", "verify"},
            {"admin", "educators"}
        }) {
            var ran = admin("", command);
            assertThat(ran.code()).as(String.join(" ", command)).isEqualTo(1);
            assertThat(ran.err())
                    .contains("earlier version", "changes nothing", "start the server")
                    .doesNotContain("\tat ");
        }
        assertThat(data.resolve("files")).doesNotExist();
        try (var server = SiteLock.take(Config.local(data, 0), Clock.systemUTC())) {
            assertThat(server).as("is up").isNotNull();
            assertThat(admin("", "admin", "import", "seed-data/harbour-rounds").err())
                    .contains("in use by another server");
        }
        assertThat(admin("", "admin", "verify").err())
                .as("nor does what is refused")
                .contains("earlier version");
        assertThat(admin("", "admin", "audit", "--count", "1").code()).isEqualTo(1);
    }

    /** H2 locks its file against other programs; within one it would share it, so this one is started. */
    @Test
    void aRunningServerWithTheEmbeddedDatabaseIsToldInOneSentence() throws IOException, InterruptedException {
        try (var database = Database.embedded(data)) {
            fill(database);
            String java =
                    Path.of(System.getProperty("java.home"), "bin", "java").toString();
            var process = new ProcessBuilder(
                            java, "-cp", System.getProperty("java.class.path"), "groundbass.Main", "admin", "educators")
                    .redirectErrorStream(true);
            process.environment().put("GROUNDBASS_DATA", data.toString());
            var running = process.start();
            String said = new String(running.getInputStream().readAllBytes(), Charset.defaultCharset());
            assertThat(running.waitFor()).as(said).isEqualTo(1);
            assertThat(said.strip())
                    .startsWith("The site in " + data + " is running")
                    .contains("Stop the server");
            assertThat(said.strip().lines()).hasSize(1);
        }
    }

    @Test
    void withPostgresTheServerMayRun() throws IOException {
        try (var postgres = EmbeddedPostgres.start();
                var running = Database.open(postgres.getJdbcUrl("postgres", "postgres"), "postgres", "")) {
            var educator = fill(running);
            var token = signIn(running, educator);
            var environment = Map.of(
                    "GROUNDBASS_DATABASE_URL",
                    postgres.getJdbcUrl("postgres", "postgres"),
                    "GROUNDBASS_DATABASE_USER",
                    "postgres");
            String mistyped = data.resolve("mistyped").toString();
            assertThat(run(environment, "", "admin", "verify", "--data", mistyped)
                            .code())
                    .isZero();
            assertThat(Path.of(mistyped)).as("nothing is made there").doesNotExist();
            var ran = run(environment, NEW + "\n", "admin", "reset-password", "--email", EMAIL);
            assertThat(ran.code()).as(ran.err()).isZero();
            assertThat(Parts.sessions(running.jdbi(), Clock.systemUTC()).find(token))
                    .isEmpty();
        }
    }

    @Test
    void everyCommandTellsItsVersion() {
        for (String[] command : new String[][] {
            {"--version"},
            {"serve", "--version"},
            {"render", "--version"},
            {"check", "--version"},
            {"admin", "--version"},
            {"admin", "audit", "--version"}
        }) {
            var ran = run(Map.of(), "", command);
            assertThat(ran.out())
                    .as(String.join(" ", command))
                    .startsWith("groundbass ")
                    .contains("Java ");
        }
    }
}
