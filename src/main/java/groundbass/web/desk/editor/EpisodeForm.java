package groundbass.web.desk.editor;

import groundbass.catalog.episode.Draft;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.recording.TrackForm;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A whole episode as typed, right or wrong. Its fields are named as {@link groundbass.catalog.episode.DocumentCheck} names them.
 *
 * @param base the version of the draft that the typing began from
 * @param number as typed; empty where it is not to be changed
 * @param groove the drums as typed, before those named
 * @param clearance whether the music may be published; empty where the form did not ask
 * @param making how its files are made; not "settings", which templates would take for a setter
 * @param local the hour to promise, as the browser writes it: {@code 2026-05-04T18:00}
 */
public record EpisodeForm(
        int base,
        String number,
        String title,
        Level level,
        String summary,
        String notes,
        String mainLine,
        List<ExerciseForm> exercises,
        List<TrackForm> tracks,
        String grooveName,
        String groove,
        Rights rights,
        Optional<Clearance> clearance,
        DocumentSettings making,
        String local,
        String zone) {
    public EpisodeForm {
        exercises = List.copyOf(exercises);
        tracks = List.copyOf(tracks);
    }

    static EpisodeForm read(Context ctx) {
        return new EpisodeForm(
                FormParameters.number(ctx, "base", 0),
                FormParameters.text(ctx, "number"),
                FormParameters.text(ctx, "title"),
                Level.parse(FormParameters.text(ctx, "level")).orElse(Level.BEGINNER),
                FormParameters.text(ctx, "summary"),
                FormParameters.text(ctx, "notes"),
                FormParameters.text(ctx, "mainLine"),
                ExerciseForm.read(ctx),
                TrackForm.read(ctx),
                FormParameters.text(ctx, "grooveName"),
                FormParameters.text(ctx, "groove"),
                rights(ctx),
                Clearance.parse(FormParameters.text(ctx, "rights.clearance")),
                making(ctx),
                FormParameters.text(ctx, "local"),
                FormParameters.text(ctx, "zone"));
    }

    /** The names of the walkthrough are no part of this form. */
    private static DocumentSettings making(Context ctx) {
        return new DocumentSettings(
                FormParameters.text(ctx, "settings.language"),
                FormParameters.text(ctx, "settings.tempos"),
                FormParameters.text(ctx, "settings.rounds"),
                DocumentSettings.USUAL.naming());
    }

    private static Rights rights(Context ctx) {
        return new Rights(
                FormParameters.text(ctx, "rights.composer"),
                FormParameters.text(ctx, "rights.credit"),
                FormParameters.text(ctx, "rights.statement"));
    }

    /** The form that shows a draft; {@code uploads} are all that were sent for it, used or not. */
    static EpisodeForm of(Draft draft, int number, List<Upload> uploads, String zone) {
        var document = draft.document();
        return new EpisodeForm(
                draft.version(),
                String.valueOf(number),
                document.title(),
                document.level(),
                document.summary(),
                document.notes(),
                document.mainLine().text(),
                document.exercises().stream().map(ExerciseForm::of).toList(),
                tracks(document, uploads),
                document.groove().name(),
                document.groove().text(),
                document.rights(),
                Optional.of(document.rights().clearance()),
                document.settings(),
                "",
                zone);
    }

    private static List<TrackForm> tracks(EpisodeDocument document, List<Upload> uploads) {
        var used = document.backingTracks().stream().map(TrackForm::of).toList();
        var others = uploads.stream()
                .filter(upload ->
                        used.stream().noneMatch(track -> track.upload().equals(upload.id())))
                .map(upload -> TrackForm.of(upload, false));
        return Stream.concat(used.stream(), others).toList();
    }

    /** The document that this says; what the form does not show is taken over from {@code before}. */
    EpisodeDocument document(EpisodeDocument before, Function<UploadId, Optional<Upload>> uploads) {
        var kept = tracks.stream()
                .flatMap(track -> uploads.apply(track.upload()).flatMap(track::track).stream())
                .map(track -> track.withMap(map(before, track)))
                .toList();
        return before.edit()
                .title(title)
                .level(level)
                .summary(summary)
                .notes(notes)
                .mainLine(new LineSource(before.mainLine().name(), mainLine))
                .exercises(exercises.stream().map(ExerciseForm::line).toList())
                .backingTracks(kept)
                .groove(new GrooveSource(grooveName, groove))
                .rights(new Rights(
                        rights.composer(),
                        rights.credit(),
                        rights.statement(),
                        clearance.orElse(before.rights().clearance())))
                .settings(new DocumentSettings(
                        making.language(),
                        making.tempos(),
                        making.rounds(),
                        before.settings().naming()))
                .done();
    }

    /** The form does not show when a recording's bars begin. */
    private static BarMap map(EpisodeDocument before, BackingTrack track) {
        return before.backingTracks().stream()
                .filter(known -> known.upload().equals(track.upload()))
                .findFirst()
                .map(BackingTrack::map)
                .orElse(BarMap.NONE);
    }

    EpisodeForm withBase(int version) {
        return with(version, exercises);
    }

    EpisodeForm withOneMoreExercise() {
        var more = new ArrayList<>(exercises);
        more.add(new ExerciseForm("", ""));
        return with(base, more);
    }

    /** Without the exercise of that place, from 0; unchanged where there is none. */
    EpisodeForm withoutExercise(int place) {
        var fewer = new ArrayList<>(exercises);
        if (place >= 0 && place < fewer.size()) {
            fewer.remove(place);
        }
        return with(base, fewer);
    }

    /** For what is shown beside the lines. */
    EpisodeForm withoutLines() {
        return with(base, "", List.of());
    }

    private EpisodeForm with(int version, List<ExerciseForm> changed) {
        return with(version, mainLine, changed);
    }

    private EpisodeForm with(int version, String line, List<ExerciseForm> changed) {
        return new EpisodeForm(
                version,
                number,
                title,
                level,
                summary,
                notes,
                line,
                changed,
                tracks,
                grooveName,
                groove,
                rights,
                clearance,
                making,
                local,
                zone);
    }
}
