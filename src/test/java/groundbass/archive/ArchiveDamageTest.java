package groundbass.archive;

import static groundbass.archive.ArchiveSite.done;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.fasterxml.jackson.databind.node.ObjectNode;
import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.ZipDirectory;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Archives that were damaged, or made to do harm. */
class ArchiveDamageTest {
    @TempDir
    static Path origin;

    private static Database from;
    private static byte[] archive;
    private static Series series;

    @TempDir
    Path folder;

    private static Database database;
    private ArchiveSite site;

    @BeforeAll
    static void write() throws IOException {
        from = BothDatabases.freshH2();
        var origins = new ArchiveSite(from, origin.resolve("files"));
        series = origins.series();
        var first = origins.write(series, "Rope", edit -> edit);
        origins.record(first);
        origins.publish(first);
        origins.write(series, "Pulley", edit -> edit);
        origins.write(series, "Tide", edit -> edit);
        archive = origins.export(series);
        database = BothDatabases.freshH2();
    }

    @AfterAll
    static void close() {
        from.close();
        database.close();
    }

    @BeforeEach
    void empty() throws IOException {
        var tables = new ArrayList<>(database.tables());
        Collections.reverse(tables);
        database.jdbi().useHandle(handle -> tables.forEach(table -> handle.execute("delete from " + table)));
        site = new ArchiveSite(database, folder.resolve("files"));
    }

    private Path file(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("series.zip"), bytes);
    }

    private static List<String> keys(BroughtIn brought) {
        return brought.findings().stream().map(finding -> finding.what().key()).toList();
    }

    private BroughtIn bringIn(Forged forged) throws IOException {
        return done(site.bringIn(forged.writeTo(folder.resolve("series.zip"))));
    }

    // --- damage

    @ParameterizedTest
    @ValueSource(
            strings = {"01-rope/line.txt", "01-rope/revisions/1/notes.md", "sheet.pdf", ".wav", "01-rope/episode.json"})
    void aDamagedFileIsNamedAndTheOtherLessonsComeIn(String ending) throws IOException {
        var forged = new Forged(archive);
        String name = forged.named(ending);
        forged.files.get(name)[20] ^= 1;
        var brought = bringIn(forged);
        assertThat(brought.findings()).extracting(ArchiveRemark::where).contains(name);
        assertThat(brought.lessons()).isEqualTo(2);
        assertThat(brought.damaged()).isEqualTo(1);

        var mended = done(site.bringIn(file(archive)));
        assertThat(mended.lessons()).isEqualTo(1);
        assertThat(mended.already()).isEqualTo(2);
        assertThat(site.lessons(series)).hasSize(3);
    }

    @ParameterizedTest
    @ValueSource(strings = {".wav", "sheet.pdf"})
    void whatWasChangedIsToldOnce(String ending) throws IOException {
        var forged = new Forged(archive);
        byte[] file = forged.files.get(forged.named(ending));
        file[file.length - 1] ^= 1;
        assertThat(keys(bringIn(forged))).containsExactly("archive.problem.changed");
    }

    @Test
    void allThatIsMissingIsNamed() throws IOException {
        var forged = new Forged(archive);
        forged.files.remove("01-rope/line.txt");
        forged.files.remove("01-rope/notes.md");
        forged.files.remove("02-pulley/episode.json");
        var brought = bringIn(forged);
        assertThat(brought.findings())
                .extracting(ArchiveRemark::where)
                .containsExactlyInAnyOrder("01-rope/line.txt", "01-rope/notes.md", "02-pulley/episode.json");
        assertThat(keys(brought)).containsOnly("archive.problem.missing");
        assertThat(brought.lessons()).isEqualTo(1);
    }

    @Test
    void withoutItsManifestEachLessonIsReadByItsOwnList() throws IOException {
        var forged = new Forged(archive);
        forged.files.remove("manifest.json");
        var brought = bringIn(forged);
        assertThat(brought.lessons()).isEqualTo(3);
        assertThat(brought.series().id()).isEqualTo(series.id());
        assertThat(keys(brought)).containsExactly("archive.no-manifest");
    }

    @Test
    void ofAZipThatBrokeOffWhatStandsBeforeComesIn() throws IOException {
        byte[] end = "03-tide/episode.json".getBytes(StandardCharsets.US_ASCII);
        int cut = indexOf(archive, end);
        var brought = done(site.bringIn(file(Arrays.copyOf(archive, cut))));
        assertThat(brought.lessons()).isEqualTo(2);
        assertThat(keys(brought)).contains("archive.broke-off", "archive.no-manifest");
        assertThat(site.lessons(series)).extracting(lesson -> lesson.title()).containsExactly("Rope", "Pulley");
    }

    private static int indexOf(byte[] whole, byte[] part) {
        for (int at = 0; at < whole.length - part.length; at++) {
            if (Arrays.equals(whole, at, at + part.length, part, 0, part.length)) {
                return at;
            }
        }
        throw new AssertionError("not in it");
    }

    /** The last two bytes say how long the remark of a zip is (PKWARE .ZIP file format specification, section 4.3.16). */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aSpoiledEndIsReadAroundWhereverItIs(int fromTheEnd) throws IOException {
        byte[] spoiled = archive.clone();
        spoiled[spoiled.length - fromTheEnd] = 1;
        var brought = done(site.bringIn(file(spoiled)));
        assertThat(keys(brought)).containsExactly("archive.broke-off");
        assertThat(brought.lessons()).isEqualTo(3);
    }

    @Test
    void noSpoiledByteEndsInAFault() throws IOException {
        long seed = 5;
        var random = new Random(seed);
        int tried = 0;
        for (; tried < 60; tried++) {
            byte[] spoiled = archive.clone();
            int at = tried % 2 == 0 ? random.nextInt(spoiled.length) : spoiled.length - 1 - random.nextInt(4_000);
            spoiled[at] ^= (byte) (1 + random.nextInt(255));
            assertThatCode(() -> site.bringIn(file(spoiled)))
                    .as("seed " + seed + ", byte " + at)
                    .doesNotThrowAnyException();
        }
        assertThat(tried).isEqualTo(60);
    }

    @Test
    void whatIsNoArchiveIsRefused() throws IOException {
        assertThat(site.bringIn(file(new byte[] {1, 2, 3})).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.no-zip");
        var empty = new Forged(archive);
        empty.files.keySet().removeIf(name -> !name.equals("read-me.txt"));
        assertThat(site.bringIn(empty.writeTo(folder.resolve("empty.zip"))).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.none");
        assertThat(site.parts.catalog().open(site.owner, Deed.KEEP)).isEmpty();
    }

    @Test
    void anArchiveOfALaterProgramIsRefused() throws IOException {
        var forged = new Forged(archive);
        String later = forged.text("manifest.json").replaceFirst("\"format\" : 1", "\"format\" : 2");
        forged.files.put("manifest.json", later.getBytes(StandardCharsets.UTF_8));
        assertThat(site.bringIn(forged.writeTo(folder.resolve("later.zip"))).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.later");
    }

    // --- whose and where

    @Test
    void anotherAddressIsOfferedWhereASeriesHasIt() throws IOException {
        site.series(); // at low-tide
        var refused = site.bringIn(file(archive));
        assertThat(refused.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.field()).isEqualTo("address");
            assertThat(problem.args()).containsExactly("low-tide", "low-tide-2");
        });
        assertThat(site.parts.catalog().open(site.owner, Deed.KEEP)).hasSize(1);
        var brought = done(site.bringIn(file(archive), "low-tide-2"));
        assertThat(brought.series().slug().value()).isEqualTo("low-tide-2");
        assertThat(brought.lessons()).isEqualTo(3);
    }

    @Test
    void aSeriesOfSomebodyElseIsNotTouched() throws IOException {
        done(site.bringIn(file(archive)));
        var other = site.educator("other@example.org");
        var refused = new ArchiveImport(site.archive, ArchiveLimits.USUAL).bringIn(other, file(archive), "mine");
        assertThat(refused.problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.elsewhere");
    }

    @Test
    void nothingComesOutBeforeItIsSaidWhoTeaches() throws IOException {
        database.jdbi().useHandle(handle -> handle.execute("delete from setting"));
        assertThat(site.bringIn(file(archive)).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.imprint");
        assertThat(site.parts.catalog().open(site.owner, Deed.KEEP)).isEmpty();
    }

    // --- harm

    @Test
    void namesThatLeadOutOfAFolderAreNeverPaths() throws IOException {
        var forged = new Forged(archive);
        for (String name :
                List.of("../evil.txt", "/evil.txt", "01-rope/../../evil.txt", "C:\\evil.txt", "a\\b", ".hidden")) {
            forged.files.put(name, new byte[] {1});
        }
        var before = everything();
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.passed-over");
        assertThat(brought.findings().get(0).what().args()).containsExactly(6);
        assertThat(brought.lessons()).isEqualTo(3);
        assertThat(everything())
                .noneMatch(file -> !before.contains(file) && file.toString().contains("evil"));
    }

    /** What lies beside the folder, where other tests come and go. */
    private List<Path> everything() throws IOException {
        var all = new ArrayList<Path>();
        Files.walkFileTree(folder.getParent(), Set.of(), 2, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                all.add(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException gone) {
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path left, IOException gone) {
                return FileVisitResult.CONTINUE;
            }
        });
        return all;
    }

    @Test
    void aListThatNamesAFileElsewhereFindsNone() throws IOException {
        var forged = new Forged(archive);
        String secret =
                Files.writeString(folder.resolve("secret.txt"), "secret").toString();
        forged.list("02-pulley", list -> list.withArray("files")
                .addObject()
                .put("name", "../../../.." + secret)
                .put("size", 6)
                .put(
                        "sha256",
                        Sha256.of("secret".getBytes(StandardCharsets.UTF_8)).hex()));
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.problem.missing");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void aFileThatUnpacksToMoreThanItsListSaysIsReadNoFurther() throws IOException {
        var forged = new Forged(archive);
        forged.files.put("01-rope/line.txt", new byte[50_000_000]);
        forged.files.put(forged.named("sheet.pdf"), new byte[50_000_000]);
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactlyInAnyOrder("archive.problem.long", "archive.problem.changed");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void moreThanAnyArchiveHoldsIsRefused() throws IOException {
        var forged = new Forged(archive);
        forged.list("02-pulley", list -> ((ObjectNode) list.get("files").get(0)).put("size", Long.MAX_VALUE));
        assertThat(site.bringIn(forged.writeTo(folder.resolve("large.zip"))).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.large");
    }

    /** One more than the columns hold. */
    @ParameterizedTest
    @CsvSource({"/shown, title, 201", "/shown, summary, 2001", "/revisions/0, note, 2001", "/releases/0, note, 301"})
    void aValueThatNoColumnHoldsKeepsItsLessonOut(String where, String what, int length) throws IOException {
        var forged = new Forged(archive);
        forged.list("01-rope", list -> ((ObjectNode) list.at(where)).put(what, "x".repeat(length)));
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.problem.json");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void aListWithASizeBelowNothingIsRefused() throws IOException {
        var forged = new Forged(archive);
        forged.list("02-pulley", list -> ((ObjectNode) list.get("files").get(0)).put("size", Long.MIN_VALUE));
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.problem.json");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void listsCountAmongWhatIsTaken() throws IOException {
        var files = new Forged(archive).files;
        long all = size(files, "");
        long lists = size(files, "/episode.json");
        long others = files.keySet().stream()
                .filter(name -> name.indexOf('/') < 0 || name.startsWith("beginning/"))
                .mapToLong(name -> files.get(name).length)
                .sum();
        assertThat(lists).isPositive();
        assertThat(limited(all - others - lists).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.large");
        assertThat(done(limited(all - others)).lessons()).isEqualTo(3);
    }

    private static long size(Map<String, byte[]> files, String ending) {
        return files.entrySet().stream()
                .filter(file -> file.getKey().endsWith(ending))
                .mapToLong(file -> file.getValue().length)
                .sum();
    }

    private Outcome<BroughtIn> limited(long bytes) throws IOException {
        return new ArchiveImport(site.archive, new ArchiveLimits(bytes, 10, 1_000))
                .bringIn(site.owner, file(archive), "");
    }

    /** The end of a zip, as its format has it, with a list of files that would fill the memory. */
    @Test
    void aListOfMoreFilesThanAnyArchiveHasIsNotRead() throws IOException {
        byte[] whole = archive.clone();
        int length = whole.length - 22 + 12;
        assertThat(whole[whole.length - 22]).isEqualTo((byte) 'P');
        whole[length + 3] = 0x30;
        assertThat(site.bringIn(file(whole)).problems())
                .extracting(problem -> problem.key())
                .containsExactly("archive.problem.large");
        assertThat(ZipDirectory.length(file(archive))).isBetween(1_000L, 20_000L);
    }

    @Test
    void jsonIsBound() throws IOException {
        var forged = new Forged(archive);
        String deep = "[".repeat(100_000);
        forged.files.put("02-pulley/episode.json", deep.getBytes(StandardCharsets.UTF_8));
        forged.files.remove("manifest.json");
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactlyInAnyOrder("archive.no-manifest", "archive.problem.json");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void aDrawingWithAScriptIsNotShown() throws IOException {
        var forged = new Forged(archive);
        String picture = forged.named(".svg");
        forged.agreeing(picture, forged.text(picture).replace("</svg>", "<script>alert(1)</script></svg>"));
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.problem.unsafe");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void aDrawingThatIsLongerThanIsLookedThroughIsNotShown() throws IOException {
        var forged = new Forged(archive);
        String picture = forged.named(".svg");
        forged.agreeing(
                picture, forged.text(picture) + "\n".repeat(ReleaseChecks.LONGEST_PAGE) + "<script>alert(1)</script>");
        var brought = bringIn(forged);
        assertThat(keys(brought)).containsExactly("archive.problem.unsafe");
        assertThat(brought.lessons()).isEqualTo(2);
    }

    @Test
    void aPageThatLeadsIntoAProgramIsNotShown() throws IOException {
        var forged = new Forged(archive);
        String page = forged.named("page.json");
        forged.agreeing(
                page, forged.text(page).replaceFirst("\"video\":\"[^\"]*\"", "\"video\":\"javascript:alert(1)\""));
        assertThat(keys(bringIn(forged))).containsExactly("archive.problem.unsafe");
    }

    /** Recordings are known by ids; an archive may name any, and gets those alone that are its educator's. */
    @Test
    void aRecordingOfSomebodyElseIsNotHadByNamingIt() throws IOException {
        var other = new ArchiveSite(
                database, folder.resolve("files"), site.clock, Optional.of(site.educator("other@example.org")));
        var theirs = other.write(
                done(other.parts.catalog().create(other.owner, new SeriesForm("Theirs", "theirs", "", "UTC"))),
                "Theirs",
                edit -> edit);
        other.record(theirs);
        var upload = other.archive.uploads().of(theirs.id()).get(0);
        var forged = new Forged(archive);
        String tracks =
                "[{\"upload\":\"%s\",\"sha256\":\"%s\",\"title\":\"x\",\"kind\":\"FULL\",\"bars\":[],\"end\":0}]"
                        .formatted(upload.id(), upload.blob().sha256());
        forged.files.put("02-pulley/recordings.json", new byte[0]);
        forged.list("02-pulley", list -> list.withArray("files")
                .addObject()
                .put("name", "recordings.json")
                .put("size", 0)
                .put("sha256", "0"));
        forged.agreeing("02-pulley/recordings.json", tracks);
        assertThat(bringIn(forged).lessons()).isEqualTo(3);
        var pulley = site.lessons(series).get(1);
        assertThat(site.parts
                        .desk()
                        .draft(site.owner, pulley.id())
                        .orElseThrow()
                        .document()
                        .backingTracks())
                .isEmpty();
    }
}
