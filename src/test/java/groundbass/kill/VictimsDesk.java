package groundbass.kill;

import groundbass.Parts;
import groundbass.audio.AudioBytes;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.upload.Uploads;
import groundbass.document.Clearance;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import groundbass.publishing.jobs.ReleaseQueue;
import groundbass.store.Blobs;
import groundbass.store.Database;
import groundbass.store.RandomId;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;

/** The educator's part of a {@link Victim}: drafts, recordings and releases. */
final class VictimsDesk {
    private static final int UPLOAD_BYTES = 16_000;
    private static final int WAV_HEAD = 44;

    private final EpisodeService desk;
    private final Uploads uploads;
    private final Publisher publisher;
    private final EducatorId educator;
    private final SeriesId series;

    VictimsDesk(Database database, Blobs blobs) {
        var jdbi = database.jdbi();
        var clock = Clock.systemUTC();
        var parts = Parts.over(jdbi, clock);
        this.desk = parts.desk();
        this.uploads = parts.uploads(blobs);
        this.publisher = new Publisher(
                parts.publishing(() -> "https://lessons.example", new ReleaseQueue(database.dataSource(), clock)));
        String name = RandomId.next();
        this.educator = done(parts.educators().create("Quay Studio", name + "@example.org", "four strings, plainly!"))
                .id();
        done(parts.settings().saveImprint(educator, new Imprint("Quay Studio", "quay@example.org", "", "", "")));
        this.series = done(parts.catalog()
                        .create(educator, new SeriesForm("Series " + name, "", "Grooves.", "Europe/Berlin")))
                .id();
    }

    void work() {
        var typed = episode();
        var recorded = episode();
        var published = episode();
        Victim.forEver(() -> save(typed));
        Victim.forEver(() -> upload(recorded));
        Victim.forEver(() -> publish(published));
    }

    private EpisodeId episode() {
        return done(desk.create(educator, series, "Lesson", Level.BEGINNER)).id();
    }

    private void save(EpisodeId episode) {
        int version = write(episode).version();
        Victim.acknowledge(Kind.DRAFT, episode + "/" + version);
    }

    private Draft write(EpisodeId episode) {
        var draft = desk.draft(educator, episode).orElseThrow();
        var document = draft.document()
                .edit()
                .mainLine(new LineSource("", "bar 1\n1-4 E5\n"))
                .notes(RandomId.next())
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
        var saved = done(desk.saveDraft(educator, episode, draft.version(), document));
        return ((DraftSave.Saved) saved).draft();
    }

    private void upload(EpisodeId episode) {
        byte[] wav = AudioBytes.wav(1, 1, 8_000, 16, UPLOAD_BYTES);
        byte[] mark = RandomId.next().getBytes(StandardCharsets.US_ASCII); // so that no two files are alike
        System.arraycopy(mark, 0, wav, WAV_HEAD, mark.length);
        try {
            var upload = done(uploads.accept(educator, episode, "take.wav", new ByteArrayInputStream(wav)));
            Victim.acknowledge(Kind.UPLOAD, upload.id().value());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void publish(EpisodeId episode) {
        write(episode);
        var release = done(publisher.bringOut(educator, episode, Seen.ANYHOW));
        Victim.acknowledge(Kind.RELEASE, release.value());
    }

    private static <T> T done(Outcome<T> outcome) {
        return outcome.result()
                .orElseThrow(() -> new IllegalStateException(outcome.problems().toString()));
    }
}
