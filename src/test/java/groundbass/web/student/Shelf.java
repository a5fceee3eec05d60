package groundbass.web.student;

import groundbass.Parts;
import groundbass.PictureBytes;
import groundbass.archive.WrittenSeries;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.identity.Slug;
import groundbass.lesson.NotePictures;
import groundbass.release.BuildSpec;
import groundbass.release.MadeAudio;
import groundbass.release.Release;
import groundbass.release.ReleaseBuilder;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.walkthrough.words.Naming;
import groundbass.web.Site;
import groundbass.web.SoundsMade;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.BooleanSupplier;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.jdbi.v3.core.Jdbi;

/** Short lessons on a site, with all their files really made: two that are out and one that is not. */
public final class Shelf {
    static final String SERIES = "quay-exercises";
    static final String DRAFT_TITLE = "Nobody may see this yet";

    /** Nine in the morning of the 20th in the series' zone (UTC+13 in its summer, IANA tzdata). */
    static final Instant FIRST = Instant.parse("2026-01-19T20:00:00Z");

    static final String SUMMARY = "Two bars that cross the strings.";

    private static final SoundsMade SOUNDS = new SoundsMade(Long.MAX_VALUE);

    private static final String LINE = """
            title   Two Planks
            key     A minor
            meter   4/4
            tempo   120
            strings E A D G
            style   finger

            bar 1 over Am7
            1    A0, A0
            2    A3
            3    D2 slap, D2 pop
            4    rest

            bar 2 = bar 1
            """;

    private static final String NOTES = """
            # What it trains

            Even *eighths*. <script>alert(1)</script> [bad](javascript:alert(1)) [good](https://bass.example/)

            ## How

            1. Slowly.
            """;

    public final Releases releases;
    final Episodes episodes;
    private final Site site;
    private final Jdbi jdbi;
    private final Uploads uploads;
    private final Blobs blobs;
    private final ReleaseBuilder builder;

    private Shelf(Site site, Jdbi jdbi, Uploads uploads, Blobs blobs, ReleaseBuilder builder) {
        this.site = site;
        this.jdbi = jdbi;
        this.uploads = uploads;
        this.blobs = blobs;
        this.builder = builder;
        this.releases = new Releases(jdbi);
        this.episodes = new Episodes(jdbi);
    }

    public static Shelf fill(Site site) {
        var shelf = empty(site);
        shelf.bring();
        SOUNDS.keep(shelf.jdbi, shelf.blobs);
        return shelf;
    }

    /** One lesson alone, which is out as number 1. */
    static Shelf with(Site site, EpisodeDocument lesson) {
        var shelf = empty(site);
        shelf.bring(List.of(new WrittenSeries.Lesson("1", 1, lesson, "")));
        shelf.publish(1, shelf.build(shelf.episode(1), lesson), FIRST);
        SOUNDS.keep(shelf.jdbi, shelf.blobs);
        return shelf;
    }

    private static Shelf empty(Site site) {
        try {
            var jdbi = site.groundbass().database().jdbi();
            var clock = site.clock();
            var blobs = new BlobFolder(site.data().resolve("files"), clock);
            var uploads = Parts.over(jdbi, clock).uploads(blobs);
            var builder = new ReleaseBuilder(
                    new Releases(jdbi),
                    new Revisions(jdbi, clock),
                    uploads,
                    blobs,
                    new MadeAudio(jdbi, new Releases(jdbi), blobs, clock),
                    clock);
            SOUNDS.lay(jdbi, blobs, clock.instant());
            return new Shelf(site, jdbi, uploads, blobs, builder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Episode episode(int number) {
        return episodes.find(new Slug(SERIES), number).orElseThrow();
    }

    public Release current(int number) {
        return releases.current(episode(number).id()).orElseThrow();
    }

    String file(int number, String name) {
        return "/files/" + current(number).id() + "/" + name;
    }

    /** Makes a release of an episode and, if wanted, puts it out in place of what is out. */
    ReleaseId release(int number, String summary, boolean out) {
        var id = build(episode(number), document(episode(number).title(), summary));
        if (out) {
            publish(number, id, site.clock().instant());
        }
        return id;
    }

    /** Puts another state of an episode out in place of what is out. */
    void correct(int number, EpisodeDocument document) {
        publish(number, build(episode(number), document), site.clock().instant());
    }

    private ReleaseId build(Episode episode, EpisodeDocument document) {
        var id = entered(episode, document);
        builder.build(id);
        return id;
    }

    private ReleaseId entered(Episode episode, EpisodeDocument document) {
        var desk = Parts.over(jdbi, site.clock()).desk();
        var draft = desk.draft(site.educator(), episode.id()).orElseThrow();
        desk.saveDraft(site.educator(), episode.id(), draft.version(), document);
        var revision =
                desk.makeRevision(site.educator(), episode.id(), "").result().orElseThrow();
        var spec = new BuildSpec(
                revision.id(),
                releases.latest(episode.id()).map(last -> last.spec().release()).orElse(0) + 1,
                "Quay Exercises",
                episode.number(),
                "%s-%02d-%s".formatted(SERIES, episode.number(), episode.slug().value()),
                site.address() + "/e/" + episode.id(),
                LocalDate.of(2026, 1, 1),
                BuildSpec.RENDERERS);
        return jdbi.inTransaction(handle ->
                releases.create(handle, episode.id(), spec, false, site.clock().instant()));
    }

    private void publish(int number, ReleaseId id, Instant at) {
        jdbi.useTransaction(handle -> {
            releases.publish(handle, id, at);
            episodes.markPublished(handle, episode(number).id(), at);
        });
    }

    /** The record is closed a moment after the last byte: asks again until it is so, for ten seconds. */
    static void await(BooleanSupplier so) {
        long end = System.nanoTime() + 10_000_000_000L;
        while (!so.getAsBoolean() && System.nanoTime() < end) {
            Thread.onSpinWait();
        }
    }

    private void bring(List<WrittenSeries.Lesson> lessons) {
        var form = new SeriesForm("Quay & Exercises", SERIES, "Short lines for <cold> hands.", "Pacific/Auckland");
        var incoming = Parts.over(jdbi, site.clock()).seriesImport(site::address, builder::build);
        incoming.run(site.educator(), new WrittenSeries(form, lessons, List.of()));
    }

    private void bring() {
        bring(List.of(
                new WrittenSeries.Lesson("1", 1, document("First <Plank>"), ""),
                new WrittenSeries.Lesson("2", 2, document("Second Plank"), ""),
                new WrittenSeries.Lesson("3", 3, document(DRAFT_TITLE), "")));
        var audit = new Audit(jdbi, site.clock());
        publish(1, build(episode(1), withOwnTrack(episode(1))), FIRST);
        publish(2, build(episode(2), document(episode(2).title())), FIRST.plus(Duration.ofDays(7)));
        new SeriesCatalog(jdbi, audit, site.clock())
                .create(site.educator(), new SeriesForm("Empty so far", "empty", "", "UTC"));
    }

    /** What is typed into the notes of an episode for a picture that was sent for it. */
    String picture(int number, String words) {
        try {
            var picture = uploads.pictures()
                    .accept(site.educator(), episode(number).id(), "thumb.png", words, PictureBytes.png())
                    .result()
                    .orElseThrow();
            return NotePictures.typed(picture.id(), words);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A lesson with a recording of the educator's own: a second of silence. */
    private EpisodeDocument withOwnTrack(Episode episode) {
        try {
            var upload = uploads.accept(site.educator(), episode.id(), "take.wav", new ByteArrayInputStream(silence()))
                    .result()
                    .orElseThrow();
            var track = new BackingTrack(
                    upload.id(), upload.blob().sha256(), "Evening take", BackingTrack.Kind.WITHOUT_BASS);
            return document(episode.title())
                    .edit()
                    .backingTracks(List.of(track))
                    .done();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Written by the JDK's own sound classes. */
    private static byte[] silence() throws IOException {
        int rate = 8_000;
        var out = new ByteArrayOutputStream();
        var format = new AudioFormat(rate, 16, 1, true, false);
        var sound = new AudioInputStream(new ByteArrayInputStream(new byte[2 * rate]), format, rate);
        AudioSystem.write(sound, AudioFileFormat.Type.WAVE, out);
        return out.toByteArray();
    }

    private static EpisodeDocument document(String title) {
        return document(title, SUMMARY);
    }

    private static EpisodeDocument document(String title, String summary) {
        return EpisodeDocument.titled(title, Level.BEGINNER)
                .edit()
                .summary(summary)
                .notes(NOTES)
                .mainLine(new LineSource("", LINE))
                .exercises(List.of(new LineSource("", LINE.replace("Two Planks", "Exercise: one plank"))))
                .rights(new Rights("Quay Studio", "Fingered by Quay Studio.", "Own work of the trial studio."))
                .settings(new DocumentSettings("en", "75", "1", Naming.USUAL.word()))
                .done();
    }
}
