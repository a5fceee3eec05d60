package groundbass.archive;

import groundbass.Parts;
import groundbass.PictureBytes;
import groundbass.archive.file.ArchiveLimits;
import groundbass.audio.AudioBytes;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.settings.Imprint;
import groundbass.document.BackingTrack;
import groundbass.document.DocumentEdit;
import groundbass.document.EpisodeDocument;
import groundbass.document.HouseStyle;
import groundbass.document.Level;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.document.WalkthroughEdit;
import groundbass.form.Outcome;
import groundbass.lesson.NotePictures;
import groundbass.publishing.BuildSpecs;
import groundbass.publishing.NewsText;
import groundbass.release.Built;
import groundbass.release.MadeAudio;
import groundbass.release.ReleaseBuilder;
import groundbass.store.BlobFolder;
import groundbass.store.Database;
import groundbass.store.DatabaseClock;
import groundbass.store.SettableClock;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** A site without pages: one educator who teaches here, and series to take out and to bring in. */
public final class ArchiveSite {
    public final SettableClock clock;
    public final Parts parts;
    public final BlobFolder blobs;
    public final ArchiveParts archive;
    public final EducatorId owner;
    private final ReleaseBuilder builder;

    ArchiveSite(Database database, Path folder) throws IOException {
        this(database, folder, SettableClock.at("2026-03-02T09:00:00.123456Z"), Optional.empty());
    }

    /** @param teacher empty to make one */
    public ArchiveSite(Database database, Path folder, SettableClock clock, Optional<EducatorId> teacher)
            throws IOException {
        this.clock = clock;
        var jdbi = database.jdbi();
        parts = Parts.over(jdbi, clock);
        blobs = new BlobFolder(folder, clock);
        archive = parts.archives(blobs);
        owner = teacher.orElseGet(() -> educator("desk@example.org"));
        builder = new ReleaseBuilder(
                parts.releases(),
                parts.revisions(),
                archive.uploads(),
                blobs,
                new MadeAudio(jdbi, parts.releases(), blobs, clock),
                clock);
    }

    /** Somebody who teaches here and signs in nowhere. */
    EducatorId educator(String email) {
        var educator = new Educator(EducatorId.next(), "Quay Studio", email, DatabaseClock.of(clock));
        parts.jdbi()
                .useHandle(
                        handle -> handle.createUpdate("""
                        insert into educator (id, name, email, password_hash, created_at)
                        values (:id, :name, :email, 'none', :createdAt)""").bindMethods(educator).execute());
        parts.settings().saveImprint(educator.id(), new Imprint("Quay Studio", email, "", "", ""));
        return educator.id();
    }

    public static <T> T done(Outcome<T> outcome) {
        return outcome.result().orElseThrow(() -> new AssertionError(outcome.problems()));
    }

    /** The first lesson of the demonstration. */
    public static EpisodeDocument lesson() throws IOException {
        return WrittenSeries.read(Path.of("seed-data", "harbour-rounds"))
                .lessons()
                .get(0)
                .document();
    }

    /** A series with everything that a series can have, and no lessons. */
    public Series series() throws IOException {
        var made = done(parts.catalog()
                .create(owner, new SeriesForm("Low Tide", "low-tide", "Grooves,\nby the sea", "Europe/Berlin")));
        var style = new HouseStyle(
                SheetLetters.typed(Map.of("slap", "S", "pop", "P")).result().orElseThrow(),
                new SheetAbbreviations(true, false),
                SheetPaper.LETTER,
                new SheetAids(CountsRow.ALL, true));
        archive.styles().save(owner, made.id(), style);
        done(archive.rhythms().save(owner, made.id(), new RhythmForm("2026-03-05", "17:00", "2", "2026-03-19")));
        archive.outlooks().save(owner, made.id(), Outlook.TITLES);
        done(archive.news().save(owner, made.id(), new NewsText("New: [title]", "Here is one.")));
        done(archive.beginnings()
                .save(owner, made.id(), lesson().edit().title("").done()));
        return made;
    }

    public Episode write(Series series, String title, UnaryOperator<DocumentEdit> change) throws IOException {
        var made = done(parts.desk().create(owner, series.id(), title, Level.BEGINNER));
        save(made, change.apply(lesson().edit().title(title)).done());
        return made;
    }

    void save(Episode lesson, EpisodeDocument document) {
        int version = parts.desk().draft(owner, lesson.id()).orElseThrow().version();
        done(parts.desk().saveDraft(owner, lesson.id(), version, document));
    }

    /** Sends a recording for a lesson and says in its draft what it is. */
    public void record(Episode lesson) throws IOException {
        var upload = done(archive.uploads()
                .accept(
                        owner,
                        lesson.id(),
                        "Band, take 2.wav",
                        new ByteArrayInputStream(AudioBytes.wav(1, 1, 8_000, 16, 16_000))));
        var track = new BackingTrack(upload.id(), upload.blob().sha256(), "The band", BackingTrack.Kind.FULL);
        var document = parts.desk().draft(owner, lesson.id()).orElseThrow().document();
        save(lesson, document.edit().backingTracks(List.of(track)).done());
    }

    /** Sends a picture for a lesson and shows it in the notes of its draft. */
    public void picture(Episode lesson) throws IOException {
        var picture = done(archive.uploads()
                .pictures()
                .accept(owner, lesson.id(), "thumb.png", "The thumb rests", PictureBytes.png()));
        var document = parts.desk().draft(owner, lesson.id()).orElseThrow().document();
        save(
                lesson,
                document.edit()
                        .notes(document.notes() + "\n\n" + NotePictures.typed(picture.id(), picture.words()) + "\n")
                        .done());
    }

    /** Brings the draft out, as far as pages and sheets. */
    public void publish(Episode lesson) {
        var now = parts.episodes().find(lesson.id()).orElseThrow();
        var revision = done(parts.desk().makeRevision(owner, lesson.id(), "as it went out"));
        var specs = new BuildSpecs(parts.catalog(), archive.styles(), parts.releases(), () -> "https://example.org");
        var id = parts.jdbi().inTransaction(handle -> parts.releases()
                .create(handle, now.id(), specs.of(handle, now, revision), now.isPublished(), clock.instant()));
        builder.draw(id);
        Built.readyAsDrawn(parts.releases(), id, clock.instant());
        parts.jdbi().useTransaction(handle -> {
            parts.releases().publish(handle, id, clock.instant());
            parts.episodes().markPublished(handle, now.id(), clock.instant());
            parts.episodes().describe(handle, now.id(), revision.document());
        });
    }

    public void correct(Episode lesson, String sentence) {
        var document = parts.desk().draft(owner, lesson.id()).orElseThrow().document();
        save(
                lesson,
                document.edit()
                        .summary(sentence)
                        .walkthroughEdits(List.of(new WalkthroughEdit(0, "anchor", 1, sentence)))
                        .done());
        publish(lesson);
    }

    public byte[] export(Series series) throws IOException {
        var out = new ByteArrayOutputStream();
        new SeriesExport(archive).writeTo(series, out);
        return out.toByteArray();
    }

    Outcome<BroughtIn> bringIn(Path file) throws IOException {
        return bringIn(file, "");
    }

    Outcome<BroughtIn> bringIn(Path file, String address) throws IOException {
        return new ArchiveImport(archive, ArchiveLimits.USUAL).bringIn(owner, file, address);
    }

    Series find(Series series) {
        return parts.catalog().find(series.id()).orElseThrow();
    }

    public List<Episode> lessons(Series series) {
        return parts.episodes().in(series.id(), 0, 1000);
    }
}
