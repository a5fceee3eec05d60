package groundbass.web.desk.sound;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.UploadId;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.recording.TrackForm;
import groundbass.web.desk.room.RoomForm;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The sound of a lesson as typed.
 *
 * @param uploads where recordings are looked up
 */
record SoundForm(Uploads uploads, GrooveSource groove, String tempos, String rounds, List<TrackForm> tracks)
        implements RoomForm {
    static SoundForm read(Context ctx, Uploads uploads) {
        return new SoundForm(
                uploads,
                new GrooveSource(
                        FormParameters.text(ctx, "grooveName"),
                        FormParameters.text(ctx, "groove"),
                        FormParameters.text(ctx, "grooveFeel"),
                        FormParameters.text(ctx, "grooveBass"),
                        FormParameters.text(ctx, "grooveChords")),
                FormParameters.text(ctx, "settings.tempos"),
                FormParameters.text(ctx, "settings.rounds"),
                TrackForm.read(ctx));
    }

    @Override
    public UnaryOperator<EpisodeDocument> change(Episode episode) {
        Map<UploadId, Upload> known = new HashMap<>();
        tracks.forEach(track -> uploads.find(track.upload()).ifPresent(upload -> known.put(upload.id(), upload)));
        return before -> in(before, episode, known);
    }

    private EpisodeDocument in(EpisodeDocument before, Episode episode, Map<UploadId, Upload> known) {
        var settings = before.settings();
        var kept = tracks.stream()
                .flatMap(track -> Optional.ofNullable(known.get(track.upload()))
                        .filter(upload -> upload.episode().equals(episode.id()) || isNamed(before, upload.id()))
                        .flatMap(track::track)
                        .stream())
                .map(track -> track.withMap(map(before, track)))
                .toList();
        return before.edit()
                .groove(groove)
                .backingTracks(kept)
                .settings(new DocumentSettings(settings.language(), tempos, rounds, settings.naming()))
                .done();
    }

    /** Whether the document holds a recording that was sent for another lesson. */
    private static boolean isNamed(EpisodeDocument before, UploadId upload) {
        return before.backingTracks().stream().map(BackingTrack::upload).anyMatch(upload::equals);
    }

    /** When a recording's bars begin is said on a page of its own. */
    private static BarMap map(EpisodeDocument before, BackingTrack track) {
        return before.backingTracks().stream()
                .filter(known -> known.upload().equals(track.upload()))
                .findFirst()
                .map(BackingTrack::map)
                .orElse(BarMap.NONE);
    }
}
