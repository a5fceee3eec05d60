package groundbass.site;

import groundbass.audio.AudioBytes;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.settings.AccountRulesForm;
import groundbass.catalog.settings.Imprint;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.form.Outcome;
import groundbass.publishing.Seen;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.release.ReleaseNote;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;

/** What the educator of a {@link YearRun} does: a lesson a week, a correction now and then, and things that go again. */
final class YearsDesk {
    private static final String ZONE = "Europe/Berlin";
    private static final String LINE = "bar 1\n1-4 E%d\n";
    private static final int FRETS = 12;
    /** Bytes of a second of sound at 8,000 samples a second; each week another second, or the store would keep one. */
    private static final int SECOND = 16_000;

    private final Services parts;
    private final EducatorId educator;
    private final Series series;
    private final List<EpisodeId> lessons = new ArrayList<>();

    YearsDesk(Services parts) {
        this.parts = parts;
        this.educator = done(parts.educators.create("Quay Studio", "desk@quay.example", "four strings and a thumb"))
                .id();
        parts.settings.saveImprint(educator, new Imprint("Quay Studio", "hello@quay.example", "", "", ""));
        parts.settings.saveAccountRules(educator, new AccountRulesForm("6", ""));
        this.series = done(parts.catalog.create(educator, new SeriesForm("Low Tide", "", "Grooves.", ZONE)));
    }

    Series series() {
        return series;
    }

    /** On a Tuesday. */
    void week(int week) throws IOException {
        var lesson = write("Week " + week, week);
        parts.publishing.publisher.accept(educator, lesson, digests(lesson));
        var hour = LocalDateTime.ofInstant(parts.clock.instant(), series.zone())
                .plusDays(1)
                .withHour(17)
                .withMinute(0);
        done(parts.publishing.publisher.schedule(educator, lesson, hour, series.zone(), Seen.ANYHOW, digests(lesson)));
        lessons.add(lesson);
        switch (week % 4) {
            case 0 -> correct(lessons.get(lessons.size() - 2), week);
            case 1 -> throwAway(week);
            case 2 -> preview(week);
            default -> takeOut(lesson, week);
        }
    }

    private EpisodeId write(String title, int fret) {
        var id = done(parts.desk.create(educator, series.id(), title, Level.BEGINNER))
                .id();
        change(id, fret);
        return id;
    }

    private void change(EpisodeId id, int fret) {
        var draft = parts.desk.draft(educator, id).orElseThrow();
        var document = draft.document()
                .edit()
                .mainLine(new LineSource("", String.format(LINE, fret % FRETS)))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .settings(new DocumentSettings("en", "100"))
                .done();
        done(parts.desk.saveDraft(educator, id, draft.version(), document));
    }

    private List<String> digests(EpisodeId id) {
        return parts.publishing.publisher.look().at(educator, find(id)).checked().asking().stream()
                .map(LessonRemark::digest)
                .toList();
    }

    private void correct(EpisodeId lesson, int week) {
        change(lesson, week + 5);
        done(parts.publishing.publisher.correct(
                educator, lesson, new ReleaseNote("Another fret.", true), Seen.ANYHOW, digests(lesson)));
    }

    /** A draft with a recording, which stays in the bin for a while. */
    private void throwAway(int week) throws IOException {
        var draft = write("Not this week " + week, week);
        upload(draft, week);
        done(parts.publishing.bin.throwAway(educator, find(draft)));
    }

    /** A preview for a colleague, of a draft that comes to nothing. */
    private void preview(int week) {
        var draft = write("Perhaps " + week, week);
        var trial = done(parts.publishing.publisher.trials().build(educator, draft));
        parts.audience.previewLinks.make(educator, trial.value(), "a colleague", Duration.ofDays(10));
    }

    private void takeOut(EpisodeId lesson, int week) throws IOException {
        var recording = upload(lesson, week);
        done(parts.takingOut.recording(educator, lesson, recording));
    }

    private UploadId upload(EpisodeId lesson, int week) throws IOException {
        var sound = new ByteArrayInputStream(AudioBytes.wav(1, 1, 8_000, 16, SECOND + 2 * week));
        return done(parts.uploads.accept(educator, lesson, "take.wav", sound)).id();
    }

    private Episode find(EpisodeId id) {
        return parts.episodes.find(id).orElseThrow();
    }

    static <T> T done(Outcome<T> outcome) {
        return outcome.result().orElseThrow(() -> new IllegalStateException(outcome.toString()));
    }
}
