package groundbass.release.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import groundbass.Parts;
import groundbass.PictureBytes;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.upload.Heard;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.identity.Sha256;
import groundbass.release.BuildSpec;
import groundbass.release.FileRole;
import groundbass.release.MadeAudio;
import groundbass.release.ReleaseBuilder;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** One small lesson with a recording of its own, whose files are damaged and looked after. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StoreCareTest {
    private static final String LINE = """
            title Slack Water
            tempo 200

            bar 1
            1-4 E0*4
            """;

    private final SettableClock clock = SettableClock.at("2026-03-02T09:00:00Z");
    private final Database database = BothDatabases.freshH2();
    private final Releases releases = new Releases(database.jdbi());
    private final BrokenFiles broken = new BrokenFiles(database.jdbi());
    private BlobFolder blobs;
    private StoreCare care;
    private StoreCare onAFullDisk;
    private Recordings recordings;
    private EducatorId educator;
    private Upload upload;
    private byte[] recording;
    private EpisodeId episode;
    private ReleaseId release;

    @BeforeAll
    void build(@TempDir Path folder) throws IOException {
        var jdbi = database.jdbi();
        var audit = new Audit(jdbi, clock);
        blobs = new BlobFolder(folder, clock);
        var uploads = Parts.over(jdbi, clock).uploads(blobs);
        var builder = builder(blobs);
        var named = new NamedFiles(jdbi, releases, uploads);
        care = new StoreCare(named, broken, releases, uploads, builder, blobs, clock);
        onAFullDisk = new StoreCare(named, broken, releases, uploads, builder(full(blobs)), blobs, clock);
        recordings = Parts.over(jdbi, clock).recordings(blobs);
        educator = TrialEducators.create(jdbi, clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        var series = new SeriesCatalog(jdbi, audit, clock)
                .create(educator, new SeriesForm("Low Tide", "", "", "UTC"))
                .result()
                .orElseThrow();
        var desk = Parts.over(jdbi, clock).desk();
        episode = desk.create(educator, series.id(), "Slack Water", Level.BEGINNER)
                .result()
                .orElseThrow()
                .id();
        recording = silence();
        upload = uploads.accept(educator, episode, "take 3.wav", new ByteArrayInputStream(recording))
                .result()
                .orElseThrow();
        recordings.listen();
        release = release(desk, episode);
        builder.build(release);
        assertThat(releases.find(release).orElseThrow().isReady()).isTrue();
    }

    private ReleaseBuilder builder(Blobs kept) {
        var jdbi = database.jdbi();
        var made = new MadeAudio(jdbi, releases, kept, clock);
        var uploads = Parts.over(jdbi, clock).uploads(kept);
        return new ReleaseBuilder(releases, new Revisions(jdbi, clock), uploads, kept, made, clock);
    }

    private static Blobs full(Blobs blobs) {
        return (Blobs) Proxy.newProxyInstance(
                Blobs.class.getClassLoader(), new Class<?>[] {Blobs.class}, (proxy, method, arguments) -> {
                    if (method.getName().equals("put")) {
                        throw new IOException("No space left on device");
                    }
                    return method.invoke(blobs, arguments);
                });
    }

    private ReleaseId release(EpisodeService desk, EpisodeId episode) {
        var track = new BackingTrack(
                upload.id(), upload.blob().sha256(), "Band in the shed", BackingTrack.Kind.WITHOUT_BASS);
        var document = EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", LINE))
                .backingTracks(List.of(track))
                .rights(new Rights("Quay Studio", "", "Original material."))
                .settings(new DocumentSettings("en", ""))
                .done();
        desk.saveDraft(
                educator, episode, desk.draft(educator, episode).orElseThrow().version(), document);
        var spec = new BuildSpec(
                desk.makeRevision(educator, episode, "").result().orElseThrow().id(),
                1,
                "Low Tide",
                1,
                "low-tide-01-slack-water",
                "https://example.org/e/" + episode,
                LocalDate.parse("2026-03-02"),
                BuildSpec.RENDERERS);
        return database.jdbi().inTransaction(handle -> releases.create(handle, episode, spec, false, clock.instant()));
    }

    @AfterAll
    void close() {
        database.close();
    }

    @AfterEach
    void everythingIsWholeAgain() throws IOException {
        blobs.put(recording);
        care.lookThrough();
        assertThat(broken.of(educator)).isEmpty();
    }

    @Test
    void everyFileOfAReleaseComesBackWithTheSameBytes() throws IOException {
        var files = made();
        assertThat(files).hasSizeGreaterThan(10);
        boolean flip = true;
        for (var sha256 : files) {
            Path file = blobs.path(sha256);
            if (flip && Files.size(file) > 0) {
                byte[] bytes = Files.readAllBytes(file);
                bytes[bytes.length / 2] ^= 1;
                Files.write(file, bytes);
            } else {
                Files.delete(file);
            }
            flip = !flip;
        }
        lookThrough();
        assertThat(broken.of(educator)).isNotEmpty().noneMatch(BrokenFiles.BrokenFile::lost);
        care.mend();
        care.mend(); // a release has more files than are mended at once
        for (var sha256 : files) {
            assertThat(blobs.verify(sha256)).as(sha256.hex()).isPresent();
        }
        assertThat(broken.of(educator)).isEmpty();
        assertThat(releases.find(release).orElseThrow().isReady()).isTrue();
    }

    @Test
    void whatAReaderAskedForInVainIsMendedWithoutALookThrough() throws IOException {
        var sheet = releases.files().named(release, "sheet.pdf").orElseThrow().sha256();
        Files.delete(blobs.path(sheet));
        assertThat(blobs.exists(sheet)).isFalse();
        care.mend();
        assertThat(blobs.exists(sheet)).isTrue();
    }

    @Test
    void whatAFullDiskKeepsFromBeingMadeAgainIsNotLost() throws IOException {
        var sheet = releases.files().named(release, "sheet.pdf").orElseThrow().sha256();
        Files.delete(blobs.path(sheet));
        lookThrough();
        for (int pass = 0; pass < 5; pass++) {
            onAFullDisk.mend();
            clock.advance(Duration.ofMinutes(10));
        }
        assertThat(broken.of(educator))
                .extracting(BrokenFiles.BrokenFile::file, BrokenFiles.BrokenFile::lost)
                .containsExactly(tuple("sheet.pdf", false));
        care.mend();
        assertThat(blobs.exists(sheet)).isTrue();
    }

    /** One bad place of a disk: the files behind it are looked at all the same. */
    @Test
    void whatCannotBeReadIsNotedAndEndsNoLookThrough() throws IOException {
        var unreadable =
                releases.files().named(release, "sheet.pdf").orElseThrow().sha256();
        Path place = blobs.path(unreadable);
        byte[] sheet = Files.readAllBytes(place);
        var all = made();
        for (var sha256 : all) {
            Files.deleteIfExists(blobs.path(sha256));
        }
        Files.createDirectory(place);
        lookThrough();
        assertThat(broken.of(educator))
                .hasSizeGreaterThan(5)
                .extracting(BrokenFiles.BrokenFile::file)
                .contains("sheet.pdf");
        Files.delete(place);
        Files.write(place, sheet);
        care.mend();
        care.mend();
    }

    @Test
    void aRecordingThatIsGoneIsLostAndSaidToBeSoUntilItComesBack() throws IOException {
        Files.delete(blobs.path(upload.blob().sha256()));
        lookThrough();
        care.mend();
        care.mend();
        assertThat(broken.of(educator))
                .extracting(BrokenFiles.BrokenFile::file, BrokenFiles.BrokenFile::lost)
                .contains(tuple("take 3.wav", true));
        blobs.put(recording);
        care.lookThrough();
        assertThat(broken.of(educator)).isEmpty();
    }

    @Test
    void aPictureThatIsGoneIsSaidToBeLostAsWell() throws IOException {
        var pictures = Parts.over(database.jdbi(), clock).uploads(blobs).pictures();
        var picture = pictures.accept(educator, episode, "thumb.png", "The thumb", PictureBytes.png())
                .result()
                .orElseThrow();
        Path place = blobs.path(picture.blob().sha256());
        byte[] bytes = Files.readAllBytes(place);
        Files.delete(place);
        lookThrough();
        care.mend();
        care.mend();
        assertThat(broken.of(educator))
                .extracting(BrokenFiles.BrokenFile::file, BrokenFiles.BrokenFile::lost)
                .containsExactly(tuple("thumb.png", true));
        Files.write(place, bytes);
        care.lookThrough();
        assertThat(broken.of(educator)).isEmpty();
    }

    @Test
    void whatWasHeardInARecordingIsHeardAgain() throws IOException {
        var hearing = ((Heard.Ready) recordings.heard(upload.id())).hearing();
        Files.delete(blobs.path(hearing));
        lookThrough();
        care.mend();
        recordings.listen();
        assertThat(blobs.exists(hearing)).isTrue();
        assertThat(recordings.heard(upload.id())).isInstanceOf(Heard.Ready.class);
    }

    /** Begins anywhere, so twice round sees all. */
    private void lookThrough() {
        for (int i = 0; i < 4; i++) {
            care.lookThrough();
        }
    }

    private Set<Sha256> made() {
        var files = new LinkedHashSet<Sha256>();
        releases.files().of(release).stream()
                .filter(file -> file.role() != FileRole.OWN_TRACK && file.role().isStored())
                .forEach(file -> files.add(file.sha256()));
        return files;
    }

    /** Written by the JDK, so that our own writer is not its own judge. */
    private static byte[] silence() throws IOException {
        var format = new AudioFormat(44_100, 16, 1, true, false);
        var stream = new AudioInputStream(new ByteArrayInputStream(new byte[88_200]), format, 44_100);
        var out = new ByteArrayOutputStream();
        AudioSystem.write(stream, AudioFileFormat.Type.WAVE, out);
        return out.toByteArray();
    }
}
