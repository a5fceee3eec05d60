package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import groundbass.Parts;
import groundbass.audio.AudioFinding;
import groundbass.audio.AudioProbe;
import groundbass.audio.Recording;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.DocumentEdit;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.identity.Sha256;
import groundbass.lesson.Lesson;
import groundbass.listening.Loudness;
import groundbass.release.play.ExactStems;
import groundbass.release.play.PlayJson;
import groundbass.release.play.PlayManifest;
import groundbass.release.request.PassingTracks;
import groundbass.release.request.StemsOnRequest;
import groundbass.release.request.TracksOnRequest;
import groundbass.release.zip.ZipPiece;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;
import javax.sound.midi.MidiSystem;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** One desk for all, so that audio is made once for all. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReleaseBuilderTest {
    /** In which a bundle unpacks. */
    private static final String FOLDER = "low-tide-03-slack-water/";

    /** How its files' names begin, as those of single downloads do. */
    private static final String OWN = FOLDER + "low-tide-03-slack-water-";

    private static final String PRACTICE = FOLDER + "practice/low-tide-03-slack-water-";

    private static final String LINE = """
            title Slack Water
            key   A minor
            tempo 96

            bar 1 over Am7
            1-2 A0, A3
            3-4 D2 pop, Dx
            """;
    private static final String EXERCISE = """
            title Only the thumb

            bar 1
            1-4 E0*4
            """;

    private final SettableClock clock = SettableClock.at("2026-03-02T09:00:00Z");
    private final Database database = BothDatabases.freshH2();
    private final Releases releases = new Releases(database.jdbi());
    private BlobFolder blobs;
    private Uploads uploads;
    private ReleaseBuilder builder;
    private EducatorId educator;
    private SeriesId series;
    private EpisodeId episode;
    private EpisodeService desk;

    @BeforeAll
    void openTheDesk(@TempDir Path folder) throws IOException {
        var jdbi = database.jdbi();
        var audit = new Audit(jdbi, clock);
        blobs = new BlobFolder(folder, clock);
        uploads = Parts.over(jdbi, clock).uploads(blobs);
        var made = new MadeAudio(jdbi, releases, blobs, clock);
        builder = new ReleaseBuilder(releases, new Revisions(jdbi, clock), uploads, blobs, made, clock);
        educator = TrialEducators.create(jdbi, clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        series = new SeriesCatalog(jdbi, audit, clock)
                .create(educator, new SeriesForm("Low Tide", "", "", "UTC"))
                .result()
                .orElseThrow()
                .id();
        desk = Parts.over(jdbi, clock).desk();
    }

    @BeforeEach
    void beginAnEpisode() {
        episode = desk.create(educator, series, "Slack Water", Level.BEGINNER)
                .result()
                .orElseThrow()
                .id();
    }

    @AfterAll
    void close() {
        database.close();
    }

    @Test
    void theSameRecipeGivesTheSameBytes() {
        var spec = spec(revision(List.of()), 1);
        var first = built(spec);
        var second = built(new BuildSpec(
                spec.revision(),
                2,
                spec.series(),
                3,
                spec.fileStem(),
                spec.episodeAddress(),
                spec.date(),
                BuildSpec.RENDERERS));
        assertThat(first.state()).isEqualTo(new BuildState.Ready());
        assertThat(digests(first.id(), "page.json", "line.mid", "line.txt", "full-100.mp3", "line-play.json"))
                .isEqualTo(digests(second.id(), "page.json", "line.mid", "line.txt", "full-100.mp3", "line-play.json"));

        var again = new LessonFiles(lesson(List.of()), spec);
        for (var step : again.steps()) {
            var file = step.get();
            assertThat(Sha256.of(file.bytes()))
                    .as(file.name())
                    .isEqualTo(releases.files()
                            .named(first.id(), file.name())
                            .orElseThrow()
                            .sha256());
        }
    }

    /** Its bytes would be none that the newer one promised. */
    @Test
    void whatANewerServerAskedForIsLeftToIt() {
        var spec = spec(revision(List.of()), 1);
        var id = entered(new BuildSpec(
                spec.revision(),
                1,
                spec.series(),
                3,
                spec.fileStem(),
                spec.episodeAddress(),
                spec.date(),
                BuildSpec.RENDERERS + 1));
        builder.build(id);
        assertThat(releases.files().of(id)).isEmpty();
        assertThat(releases.find(id).orElseThrow().isUnderWay()).isTrue();
    }

    /** As where another node makes the same at the same time. */
    @Test
    void whatAnotherHasEnteredMeanwhileStays() {
        var id = entered(spec(revision(List.of()), 1));
        builder.draw(id);
        var drawn = releases.files().of(id);
        assertThat(drawn).isNotEmpty();
        releases.builds().add(id, drawn);
        assertThat(releases.files().of(id)).isEqualTo(drawn);
        assertThat(releases.find(id).orElseThrow().isUnderWay()).isTrue();
    }

    @Test
    void theBundleIsTheSameWhenBuiltTwice() throws IOException {
        var id = built(spec(revision(List.of()), 1)).id();
        var zip = releases.files().of(id).get(0);
        byte[] sent = sent(id);
        // what its row promises to who takes it in pieces
        assertThat(sent).hasSize((int) zip.size());
        assertThat(Sha256.of(sent)).isEqualTo(zip.sha256());
        assertThat(blobs.exists(zip.sha256())).isFalse();
    }

    private byte[] sent(ReleaseId id) throws IOException {
        var out = new ByteArrayOutputStream();
        for (var piece :
                new Bundles(releases, blobs).pieces(id, releases.files().of(id).get(0))) {
            if (piece instanceof ZipPiece.Head head) {
                out.write(head.bytes());
            } else if (piece instanceof ZipPiece.Content content) {
                try (var in = blobs.open(content.sha256())) {
                    in.transferTo(out);
                }
            }
        }
        return out.toByteArray();
    }

    /** The JDK's reader of zip files goes by the directory at its end, and checks every sum. */
    @Test
    void anotherReaderOpensTheBundleByItsDirectory(@TempDir Path folder) throws IOException {
        var id = built(spec(revision(List.of()), 1)).id();
        var path = Files.write(folder.resolve("lesson.zip"), sent(id));
        try (var zip = new ZipFile(path.toFile())) {
            var names = zip.stream().toList();
            assertThat(names).hasSizeGreaterThan(10);
            for (var entry : names) {
                try (var in = zip.getInputStream(entry)) {
                    var crc = new CRC32();
                    crc.update(in.readAllBytes());
                    assertThat(crc.getValue()).isEqualTo(entry.getCrc());
                }
            }
        }
    }

    @Test
    void aTrackThatSomebodyAsksForIsMadeOnceAndKept() throws IOException {
        var id = built(spec(revision(List.of()), 1)).id();
        var zip = releases.files().of(id).get(0);
        var release = releases.find(id).orElseThrow();
        var made = onRequest().find(release, "exercise-1-without-drums-85.mp3").orElseThrow();
        assertThat(made.role()).isEqualTo(FileRole.ON_REQUEST);
        assertThat(onRequest().find(release, made.name())).contains(made);
        assertThat(releases.files().named(id, made.name())).contains(made);
        assertThat(blobs.exists(made.sha256())).isTrue();
        // the bundle stays what its row says
        assertThat(Sha256.of(sent(id))).isEqualTo(zip.sha256());
        for (String no :
                List.of("full-39.mp3", "full-131.mp3", "exercise-2-full-90.mp3", "full-90.wav", "drums-90.mp3")) {
            assertThat(onRequest().find(release, no)).as(no).isEmpty();
        }
    }

    /** For browsers that cannot decode Opus. These files are no part of the release, nor of what the sweep looks through. */
    @Test
    void whatThePagePlaysIsMadeWithoutLossWhenItIsAskedFor(@TempDir Path passing) throws IOException {
        var id = built(spec(revision(List.of()), 1)).id();
        var files = releases.files().of(id);
        var release = releases.find(id).orElseThrow();
        int stored = stored();
        var stems = stems(passing, StemsOnRequest.MOST_BYTES);
        String name = manifest("exercise-1-play.json", id).tempos().get(0).exact();
        assertThat(stems.known(release, name)).isEmpty();
        var exact = exact(stems.find(release, name).orElseThrow());
        assertThat(exact.bars())
                .isEqualTo(manifest("exercise-1-play.json", id).tempos().get(0).bars());
        var bass = exact.files().get("bass");
        assertThat(bass.decoding()).isNull();
        var stem = stems.known(release, bass.url()).orElseThrow();
        assertThat(stem.file().role().isPlayed()).isTrue();
        assertThat(bytes(stem)).startsWith('f', 'L', 'a', 'C');
        assertThat(stems.known(release, exact.countIn().url())).isPresent();
        assertThat(releases.files().of(id)).isEqualTo(files);
        assertThat(stored())
                .as("stored files, which a sweep would find without a row")
                .isEqualTo(stored);
        for (String no : List.of(
                "exercise-2-100-exact.json",
                "line-99-exact.json",
                "line-100-bass-0123456789ab.flac",
                "line-play.json")) {
            assertThat(stems.find(release, no)).as(no).isEmpty();
        }
        stems.close();
        assertThat(passing).doesNotExist();
    }

    /** Somebody clears a folder of files that may pass; a disk changes a byte. */
    @Test
    void whatIsGoneOrDamagedOfItIsMadeAgain(@TempDir Path passing) throws IOException {
        var release = releases.find(built(spec(revision(List.of()), 1)).id()).orElseThrow();
        var stems = stems(passing, StemsOnRequest.MOST_BYTES);
        String manifest = ExactStems.manifest("exercise-1", 100);
        String name = exact(stems.find(release, manifest).orElseThrow())
                .files()
                .get("bass")
                .url();
        var whole = bytes(stems.find(release, name).orElseThrow());
        try (var files = stems.find(release, name)
                .orElseThrow()
                .files()
                .local(stems.find(release, name).orElseThrow().file().sha256())) {
            Files.delete(files.path());
        }
        assertThat(stems.known(release, name)).isEmpty();
        assertThat(bytes(stems.find(release, name).orElseThrow())).isEqualTo(whole);
    }

    @Test
    void whatNobodyAskedForLongestGoesWhereItIsTooMuch(@TempDir Path passing) {
        var release = releases.find(built(spec(revision(List.of()), 1)).id()).orElseThrow();
        var one = ExactStems.manifest("exercise-1", 100);
        var other = ExactStems.manifest("line", 100);
        try (var roomy = stems(passing.resolve("roomy"), StemsOnRequest.MOST_BYTES)) {
            roomy.find(release, one);
            roomy.find(release, other);
            assertThat(roomy.known(release, one)).isPresent();
        }
        try (var narrow = stems(passing.resolve("narrow"), 1)) {
            narrow.find(release, one);
            assertThat(narrow.known(release, one))
                    .as("the only one, however large")
                    .isPresent();
            narrow.find(release, other);
            assertThat(narrow.known(release, one)).isEmpty();
            assertThat(narrow.known(release, other)).isPresent();
        }
    }

    private StemsOnRequest stems(Path passing, long most) {
        return new StemsOnRequest(builder, passing, most, clock);
    }

    private int stored() throws IOException {
        var all = new ArrayList<Sha256>();
        blobs.forEach(all::add);
        return all.size();
    }

    private static PlayManifest.Tempo exact(StemsOnRequest.Stem manifest) throws IOException {
        return PlayJson.read(bytes(manifest)).tempos().get(0);
    }

    private static byte[] bytes(StemsOnRequest.Stem stem) throws IOException {
        try (var in = stem.files().open(stem.file().sha256())) {
            return in.readAllBytes();
        }
    }

    private PlayManifest manifest(String name, ReleaseId id) throws IOException {
        return PlayJson.read(bytes(id, name));
    }

    private TracksOnRequest onRequest() {
        return onRequest(builder);
    }

    private TracksOnRequest onRequest(ReleaseBuilder making) {
        return new TracksOnRequest(new PassingTracks(database.jdbi(), releases, 120, Long.MAX_VALUE, clock), making);
    }

    /** Each server has a turn of its own: what another enters meanwhile stands for both. */
    @Test
    void twoServersMayMakeOneTrackAtOnce() {
        var release = built(spec(revision(List.of()), 1));
        var first = new ArrayList<ReleaseFile>();
        var meanwhile = before("put", () -> onRequest()
                .find(release, "full-60.mp3")
                .filter(file -> first.isEmpty())
                .ifPresent(first::add));
        var other =
                new ReleaseBuilder(releases, new Revisions(database.jdbi(), clock), uploads, meanwhile, made(), clock);
        assertThat(onRequest(other).find(release, "full-60.mp3")).contains(first.get(0));
        assertThat(releases.files().of(release.id()))
                .filteredOn(file -> file.name().equals("full-60.mp3"))
                .hasSize(1);
    }

    private Blobs before(String called, Runnable task) {
        return (Blobs) Proxy.newProxyInstance(
                Blobs.class.getClassLoader(), new Class<?>[] {Blobs.class}, (proxy, method, args) -> {
                    if (method.getName().equals(called)) task.run();
                    return method.invoke(blobs, args);
                });
    }

    @Test
    void theBundleHoldsEverythingAReaderTakesHome() throws IOException {
        var release = built(spec(revision(List.of()), 1));
        var zip = unzipped(release.id());
        assertThat(zip.keySet())
                .containsExactly(
                        FOLDER + "README.txt",
                        OWN + "exercise-1.braille.txt",
                        OWN + "exercise-1.brf",
                        OWN + "exercise-1.from-bar-1.mid",
                        OWN + "exercise-1.mid",
                        OWN + "exercise-1.musicxml",
                        OWN + "exercise-1.tab.txt",
                        OWN + "exercise-1.txt",
                        OWN + "line.braille.txt",
                        OWN + "line.brf",
                        OWN + "line.from-bar-1.mid",
                        OWN + "line.mid",
                        OWN + "line.musicxml",
                        OWN + "line.tab.txt",
                        OWN + "line.txt",
                        OWN + "sheet.pdf",
                        PRACTICE + "bass-100.mp3",
                        PRACTICE + "exercise-1.mp3",
                        PRACTICE + "full-100.mp3",
                        PRACTICE + "full-50.mp3",
                        PRACTICE + "without-bass-100.mp3");
        assertThat(new String(zip.get(OWN + "line.txt"), StandardCharsets.UTF_8))
                .isEqualTo(LINE);
    }

    /** What is damaged of an old release is made again from its specification, and has to be what it was. */
    @Test
    void aReleaseFromBeforeThereWasMusicXmlStaysWithoutIt() {
        var spec = spec(revision(List.of()), 1);
        var before = new BuildSpec(
                spec.revision(),
                2,
                spec.series(),
                spec.episodeNumber(),
                spec.fileStem(),
                spec.episodeAddress(),
                spec.date(),
                5);
        assertThat(releases.files().of(built(before).id()))
                .isNotEmpty()
                .noneMatch(file -> file.role() == FileRole.MUSICXML);
        assertThat(releases.files().of(built(spec(revision(List.of()), 3)).id()))
                .filteredOn(file -> file.role() == FileRole.MUSICXML)
                .extracting(ReleaseFile::name)
                .containsExactly("line.musicxml", "exercise-1.musicxml");
    }

    @Test
    void anExerciseHasTheFilesThatAreExplained() {
        assertThat(releases.files().of(built(spec(revision(List.of()), 1)).id()))
                .filteredOn(file -> file.exercise().isPresent() && file.role().isOffered())
                .extracting(ReleaseFile::form)
                .containsExactlyInAnyOrderElementsOf(EveryFileRoleTest.OF_EXERCISES);
    }

    /** What is damaged of an old release is made again from its specification, and has to be what it was. */
    @Test
    void aReleaseFromBeforeThereWasMidiWithoutCountInStaysWithoutIt() {
        var spec = spec(revision(List.of()), 1);
        var before = new BuildSpec(
                spec.revision(),
                2,
                spec.series(),
                spec.episodeNumber(),
                spec.fileStem(),
                spec.episodeAddress(),
                spec.date(),
                21);
        assertThat(releases.files().of(built(before).id()))
                .filteredOn(file -> file.role() == FileRole.MIDI)
                .extracting(ReleaseFile::name)
                .containsExactly("line.mid", "exercise-1.mid");
    }

    @Test
    void aReleaseFromBeforeThereWasBrailleStaysWithoutIt() {
        var spec = spec(revision(List.of()), 1);
        var before = new BuildSpec(
                spec.revision(),
                2,
                spec.series(),
                spec.episodeNumber(),
                spec.fileStem(),
                spec.episodeAddress(),
                spec.date(),
                13);
        assertThat(releases.files().of(built(before).id()))
                .isNotEmpty()
                .noneMatch(file -> file.role() == FileRole.BRAILLE || file.role() == FileRole.BRAILLE_TEXT);
    }

    /** What the lesson says of itself stands in the line's file as it does on its sheet. */
    @Test
    void theLineForOtherProgramsCarriesCreditsAndRights() throws IOException {
        var release = built(spec(revision(List.of()), 1));
        assertThat(new String(bytes(release.id(), "line.musicxml"), StandardCharsets.UTF_8))
                .contains(
                        "<work-title>Slack Water</work-title>",
                        "Quay Studio",
                        "<rights>Original material.</rights>",
                        "<source>https://example.org/e/");
        assertThat(new String(bytes(release.id(), "exercise-1.musicxml"), StandardCharsets.UTF_8))
                .contains("<work-title>Only the thumb</work-title>", "<rights>Original material.</rights>");
    }

    @Test
    void otherReadersUnderstandTheFiles() throws Exception {
        var release = built(spec(revision(List.of()), 1));
        try (var pdf = Loader.loadPDF(bytes(release.id(), "sheet.pdf"))) {
            assertThat(new PDFTextStripper().getText(pdf)).contains("Slack Water", "Low Tide", "Only the thumb");
        }
        var midi = MidiSystem.getSequence(new ByteArrayInputStream(bytes(release.id(), "line.mid")));
        assertThat(midi.getTracks()).hasSize(5); // conductor, bass, drums, chords, click
        var page = PageJson.read(bytes(release.id(), "page.json"));
        assertThat(page.lines()).hasSize(2);
        assertThat(page.lines().get(0).pictures()).isNotEmpty().allSatisfy(picture -> assertThat(
                        new String(bytes(release.id(), picture.file()), StandardCharsets.UTF_8))
                .startsWith("<svg"));
    }

    @Test
    void theReadMeGivesCreditsRightsAndCautions() throws IOException {
        var release = built(spec(revision(List.of()), 1));
        String tab = new String(bytes(release.id(), "line.tab.txt"), StandardCharsets.UTF_8);
        assertThat(tab).contains("Quay Studio", "Original material.", "https://example.org/e/");
        String text = new String(bytes(release.id(), "README.txt"), StandardCharsets.UTF_8);
        assertThat(text).contains("Quay Studio", "Original material.", "https://example.org/e/", "sheet.pdf");
        assertThat(text)
                .containsIgnoringCase("doctor")
                .containsIgnoringCase("volume")
                .contains("local law");
        assertThat(text)
                .contains(
                        "the whole band, at the full tempo",
                        "the band without bass, at the full tempo",
                        "40 to 130 %",
                        "Exercise 1 as a Standard MIDI File",
                        "Exercise 1 as text");
        assertThat(text.lines()).isNotEmpty().allSatisfy(line -> assertThat(line.length())
                .isLessThanOrEqualTo(76));
    }

    @Test
    void anOwnRecordingGoesAlong() throws IOException {
        var upload = uploads.accept(educator, episode, "take 3.wav", new ByteArrayInputStream(silence()))
                .result()
                .orElseThrow();
        var track = new BackingTrack(
                upload.id(), upload.blob().sha256(), "Band in the shed", BackingTrack.Kind.WITHOUT_BASS);
        var release = built(spec(revision(List.of(track)), 1));
        assertThat(releases.files()
                        .named(release.id(), "own-1-band-in-the-shed.wav")
                        .orElseThrow()
                        .sha256())
                .isEqualTo(upload.blob().sha256());
        assertThat(unzipped(release.id())).containsKey(OWN + "own-1-band-in-the-shed.wav");
    }

    @Test
    void thePracticeSetIsTaggedAndWithoutLossToo() throws IOException {
        var release = built(spec(revision(List.of()), 1));
        onRequest().find(release, "without-bass-50.mp3");
        onRequest().find(release, "full-100.flac");
        byte[] mp3 = bytes(release.id(), "without-bass-50.mp3");
        // ID3v2.3.0, section 3.1: "ID3", version 3.0, no flags; then frames, the text as UTF-16 with its mark
        assertThat(mp3).startsWith('I', 'D', '3', 3, 0, 0);
        String head = new String(mp3, 0, 2_000, StandardCharsets.UTF_16LE)
                + new String(mp3, 1, 2_000, StandardCharsets.UTF_16LE);
        assertThat(head).contains("Slack Water: without bass, 50 %", "Low Tide", "48", "PREROLL_SECONDS", "0.4");
        assertThat(new String(mp3, StandardCharsets.ISO_8859_1)).contains("APIC", "image/png", "TPOS", "TRCK");
        byte[] flac = bytes(release.id(), "full-100.flac");
        String text = new String(flac, 0, 1_000, StandardCharsets.UTF_8);
        // RFC 9639, section 8.6: fields of a Vorbis comment
        assertThat(text)
                .startsWith("fLaC")
                .contains(
                        "TITLE=Slack Water: whole band, 100 %",
                        "ALBUM=Low Tide", "DISCNUMBER=3", "TRACKNUMBER=6", "BPM=96", "PREROLL_SECONDS=0.4");
        assertThat(releases.files()
                        .named(release.id(), "full-100.flac")
                        .orElseThrow()
                        .role())
                .isEqualTo(FileRole.ON_REQUEST);
    }

    @Test
    void anotherDecoderReadsWhatWasEncoded() throws IOException {
        var release = built(spec(revision(List.of()), 1));
        onRequest().find(release, "full-100.flac");
        // 0.4 s of silence, two rounds of a bar of 4/4 at 96 and its count-in, which take 7.5 s; then it fades
        for (String name : List.of("full-100.mp3", "full-100.flac")) {
            var path = blobs.path(
                    releases.files().named(release.id(), name).orElseThrow().sha256());
            AudioFinding found;
            try (var channel = Files.newByteChannel(path)) {
                found = AudioProbe.probe(channel);
            }
            assertThat(found).as(name).isInstanceOf(AudioFinding.Audio.class);
            var facts = ((AudioFinding.Audio) found).facts();
            assertThat(facts.duration().toMillis()).as(name).isBetween(9_300L, 9_550L);
            try (var recording = Recording.open(Files.newByteChannel(path), facts)) {
                var loudness = Loudness.of(recording);
                assertThat(loudness.integrated()).as(name).isEqualTo(-16, within(0.5)); // rule: lesson-loudness
                assertThat(loudness.truePeak()).as(name).isLessThanOrEqualTo(-1); // rule: peak-limit
            }
        }
    }

    @Test
    void aChangedWordMakesNoSoundAnew() {
        var first = built(spec(revision(List.of()), 1));
        int made = recordings();
        var second = corrected(edit -> edit.notes("Mind the tide."));
        for (String name : List.of("line-play.json", "line-100-bass.opus", "exercise-1-100-drums.opus")) {
            assertThat(digests(first.id(), name)).isEqualTo(digests(second.id(), name));
        }
        assertThat(recordings()).isEqualTo(made);
    }

    @Test
    void aNewNameMakesNoSoundAnew() {
        built(spec(revision(List.of()), 1));
        int made = recordings();
        corrected(edit -> edit.mainLine(new LineSource("", LINE.replace("Slack Water", "Spring Tide"))));
        assertThat(recordings()).isEqualTo(made);
    }

    private Release corrected(UnaryOperator<DocumentEdit> change) {
        int version = desk.draft(educator, episode).orElseThrow().version();
        desk.saveDraft(
                educator,
                episode,
                version,
                change.apply(document(List.of()).edit()).done());
        return built(spec(desk.makeRevision(educator, episode, "").result().orElseThrow(), 2));
    }

    private int recordings() {
        return database.jdbi().withHandle(handle -> handle.createQuery("select count(*) from made_audio")
                .mapTo(Integer.class)
                .one());
    }

    @Test
    void whatIsPlayedOnThePageIsNeitherOfferedNorBundled() {
        var files = releases.files().of(built(spec(revision(List.of()), 1)).id());
        assertThat(files)
                .filteredOn(file -> file.role() == FileRole.STEM)
                .hasSize(2 * 2 * 4) // lines, tempos, stems
                .isNotEmpty()
                .noneMatch(file -> file.role().isOffered() || file.role().isBundled());
        assertThat(files)
                .filteredOn(file -> file.role() == FileRole.PLAY)
                .extracting(ReleaseFile::name)
                .containsExactly("line-play.json", "exercise-1-play.json");
    }

    @Test
    void whatMattersLeastIsLeftOutOfAFullBundle() {
        var tracks = Stream.of("full-100", "full-50", "bass-70")
                .map(name -> new ReleaseFile(
                        name + ".mp3",
                        FileRole.PRACTICE,
                        "audio/mpeg",
                        25_000_000,
                        Sha256.of(name.getBytes(StandardCharsets.UTF_8))))
                .toList();
        assertThat(Bundle.fitting(tracks)).extracting(ReleaseFile::name).containsExactly("full-100.mp3", "bass-70.mp3");
    }

    @Test
    void aReleaseThatIsReadyIsNotBuiltAgain() {
        var release = built(spec(revision(List.of()), 1));
        var files = releases.files().of(release.id());
        builder.build(release.id());
        assertThat(releases.files().of(release.id())).isEqualTo(files);
    }

    @Test
    void whatReadersHaveBeforeAllIsThereStaysAsItIs() {
        var id = entered(spec(revision(List.of()), 1));
        builder.open(id);
        var opened = releases.files().of(id);
        assertThat(opened)
                .extracting(ReleaseFile::name)
                .contains("sheet.pdf", "page.json", "line-wide.svg", "exercise-1-narrow.svg")
                .doesNotContain("line.mid", "line.txt");
        builder.draw(id);
        var read = releases.files().of(id);
        assertThat(read).startsWith(opened.toArray(ReleaseFile[]::new));
        assertThat(read)
                .extracting(ReleaseFile::name)
                .contains("sheet.pdf", "page.json", "line-wide.svg", "exercise-1.mid")
                .doesNotContain("line-play.json", "full-100.mp3");
        assertThat(shown(id)).isTrue();
        assertThat(releases.current(episode))
                .hasValueSatisfying(out -> assertThat(out.isSoundToFollow()).isTrue());
        builder.play(id);
        var played = releases.files().of(id);
        assertThat(played).startsWith(read.toArray(ReleaseFile[]::new));
        assertThat(played)
                .extracting(ReleaseFile::name)
                .contains("line-play.json", "exercise-1-100-bass.opus")
                .doesNotContain("full-100.mp3")
                .doesNotHaveDuplicates();
        builder.build(id);
        assertThat(releases.files().of(id)).containsAll(played);
        assertThat(releases.files().of(id))
                .extracting(ReleaseFile::name)
                .startsWith("low-tide-03-slack-water.zip", "sheet.pdf")
                .contains("line-play.json", "full-100.mp3")
                .doesNotHaveDuplicates();
        assertThat(releases.current(episode))
                .hasValueSatisfying(out -> assertThat(out.isSoundToFollow()).isFalse());
    }

    @Test
    void nothingGoesOutOfWhichNothingCanBeRead() {
        var id = entered(spec(revision(List.of()), 1));
        assertThat(shown(id)).isFalse();
        assertThat(releases.current(episode)).isEmpty();
    }

    @Test
    void soundThatCouldNotBeMadeForALessonThatIsOutIsTriedAgain() {
        var id = entered(spec(revision(List.of()), 1));
        builder.draw(id);
        assertThat(shown(id)).isTrue();
        releases.builds().failed(id, BuildState.Failure.OTHER, clock.instant());
        releases.builds().tryAgain(clock.instant().plus(Duration.ofMinutes(1)));
        assertThat(releases.builds().unfinished()).extracting(Release::id).contains(id);
    }

    private boolean shown(ReleaseId id) {
        return database.jdbi().inTransaction(handle -> releases.publishReadable(handle, id, clock.instant()));
    }

    @Test
    void aReleaseThatWasDeletedWhileItsBuildWaitedIsNoneToBuild() {
        assertThatCode(() -> builder.build(ReleaseId.next())).doesNotThrowAnyException();
    }

    /** The message is the Java runtime's own, of a machine that is going down. */
    @Test
    void whatAShutdownStopsHasNotFailedAndGoesOnAfterTheStart() {
        var id = entered(spec(revision(List.of()), 1));
        var stopped =
                new ReleaseBuilder(releases, new Revisions(database.jdbi(), clock), uploads, breaking(), made(), clock);
        stopped.stop();
        stopped.build(id);
        assertThat(releases.find(id).orElseThrow().isUnderWay()).isTrue();
        assertThat(releases.builds().unfinished()).extracting(Release::id).contains(id);
        builder.build(id);
        assertThat(releases.find(id).orElseThrow().isReady()).isTrue();
    }

    @Test
    void whatBreaksOtherwiseHasFailedAndIsTriedAgain() {
        var id = entered(spec(revision(List.of()), 1));
        var broken =
                new ReleaseBuilder(releases, new Revisions(database.jdbi(), clock), uploads, breaking(), made(), clock);
        broken.build(id);
        assertThat(releases.find(id).orElseThrow().state())
                .isEqualTo(new BuildState.Failed(
                        BuildState.Failure.OTHER, 1, clock.instant().plus(Duration.ofMinutes(1))));
    }

    /** It has its pause like any other, and whoever watches over the memory hears of it. */
    @Test
    void aBuildForWhichTheMemoryIsTooSmallHasFailedAndSaysSo() {
        var id = entered(spec(revision(List.of()), 1));
        var broken = new ReleaseBuilder(
                releases,
                new Revisions(database.jdbi(), clock),
                uploads,
                breaking(new OutOfMemoryError("Java heap space")),
                made(),
                clock);
        assertThatThrownBy(() -> broken.build(id)).isInstanceOf(OutOfMemoryError.class);
        assertThat(releases.find(id).orElseThrow().state())
                .isEqualTo(new BuildState.Failed(
                        BuildState.Failure.NO_MEMORY, 1, clock.instant().plus(Duration.ofMinutes(1))));
    }

    /** As after a step back to an earlier version, or from one. */
    @Test
    void whatAnotherVersionWroteOfAudioIsMadeAgain() throws IOException {
        var made = made();
        var key = MadeAudio.key("a line of another version");
        made.keep(key, List.of("a list"));
        assertThat(made.<Loudness>find(key, Loudness.class, any -> List.of())).isEmpty();
        var now = new Loudness(-16, -1);
        assertThat(made.findOrKeep(key, Loudness.class, any -> List.of(), () -> now))
                .isEqualTo(now);
        assertThat(made.<Loudness>find(key, Loudness.class, any -> List.of())).contains(now);
    }

    @Test
    void whatWasMadeOfAudioIsForgottenAfterASeason() {
        var made = made();
        var key = MadeAudio.key("a line of long ago");
        made.keep(key, List.of("what it came to"));
        clock.advance(Duration.ofDays(89));
        made.forgetOld();
        assertThat(made.find(key, List.class, any -> List.of())).isPresent();
        clock.advance(Duration.ofDays(2));
        made.forgetOld();
        assertThat(made.find(key, List.class, any -> List.of())).isEmpty();
    }

    private static Blobs breaking() {
        return breaking(new IllegalStateException("Shutdown in progress"));
    }

    /** Stores nothing: every file breaks the build. */
    private static Blobs breaking(Throwable why) {
        return (Blobs) Proxy.newProxyInstance(
                Blobs.class.getClassLoader(), new Class<?>[] {Blobs.class}, (proxy, method, args) -> {
                    throw why;
                });
    }

    private MadeAudio made() {
        return new MadeAudio(database.jdbi(), releases, blobs, clock);
    }

    private ReleaseId entered(BuildSpec spec) {
        return database.jdbi().inTransaction(handle -> releases.create(handle, episode, spec, false, clock.instant()));
    }

    private Release built(BuildSpec spec) {
        var id = entered(spec);
        builder.build(id);
        return releases.find(id).orElseThrow();
    }

    private BuildSpec spec(Revision revision, int number) {
        return new BuildSpec(
                revision.id(),
                number,
                "Low Tide",
                3,
                "low-tide-03-slack-water",
                "https://example.org/e/" + episode,
                LocalDate.parse("2026-03-02"),
                BuildSpec.RENDERERS);
    }

    private Revision revision(List<BackingTrack> tracks) {
        int version = desk.draft(educator, episode).orElseThrow().version();
        desk.saveDraft(educator, episode, version, document(tracks));
        return desk.makeRevision(educator, episode, "").result().orElseThrow();
    }

    private static Lesson lesson(List<BackingTrack> tracks) {
        return Lesson.of(document(tracks));
    }

    private static EpisodeDocument document(List<BackingTrack> tracks) {
        return EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", LINE))
                .exercises(List.of(new LineSource("", EXERCISE)))
                .backingTracks(tracks)
                .rights(new Rights("Quay Studio", "", "Original material."))
                .settings(new DocumentSettings("en", "50"))
                .done();
    }

    private Map<String, String> digests(ReleaseId id, String... names) {
        var digests = new TreeMap<String, String>();
        for (String name : names) {
            digests.put(
                    name,
                    releases.files().named(id, name).orElseThrow().sha256().hex());
        }
        return digests;
    }

    private byte[] bytes(ReleaseId id, String name) throws IOException {
        try (var in = blobs.open(releases.files().named(id, name).orElseThrow().sha256())) {
            return in.readAllBytes();
        }
    }

    private Map<String, byte[]> unzipped(ReleaseId id) throws IOException {
        var entries = new TreeMap<String, byte[]>();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(sent(id)))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                entries.put(entry.getName(), zip.readAllBytes());
            }
        }
        return entries;
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
