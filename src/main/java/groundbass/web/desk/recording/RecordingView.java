package groundbass.web.desk.recording;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.upload.Heard;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.performance.Playing;
import groundbass.web.desk.access.DeskContext;
import java.util.Optional;

/**
 * The page on which the bars of a recording are set.
 *
 * @param path of the episode on the desk
 * @param name what the lesson calls the recording, else what its file was called
 * @param used whether the saved lesson holds it
 * @param state {@code waiting}, {@code broken} or {@code ready}
 */
public record RecordingView(
        String path, String id, String title, String name, boolean used, String state, TrackRow.Facts facts) {
    static RecordingView of(Episode episode, EpisodeDocument document, Upload upload, Heard heard) {
        Optional<BackingTrack> track = document.backingTracks().stream()
                .filter(one -> one.upload().equals(upload.id()))
                .findFirst();
        return new RecordingView(
                DeskContext.path(episode),
                upload.id().value(),
                document.title(),
                track.map(BackingTrack::title).orElse(upload.originalName()),
                track.isPresent(),
                RecordingPages.state(heard),
                TrackRow.Facts.of(upload, heard));
    }

    public String recording() {
        return path + "/tracks/" + id;
    }

    public int mostRounds() {
        return Playing.MOST_ROUNDS;
    }
}
