package groundbass.web.desk.recording;

import groundbass.audio.AudioFormat;
import groundbass.catalog.upload.Heard;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.listening.Loudness;
import java.util.Optional;

/** A recording as the page lists it; {@code facts} are missing where nobody is signed in to see them. */
public record TrackRow(String id, boolean used, String title, BackingTrack.Kind kind, Optional<Facts> facts) {
    /** What it is by its content; {@code length} in minutes and seconds. */
    public record Facts(
            String originalName, AudioFormat format, String length, long size, Optional<Loudness> loudness) {
        static Facts of(Upload upload, Heard heard) {
            var duration = upload.facts().duration();
            String length = "%d:%02d".formatted(duration.toMinutes(), duration.toSecondsPart());
            return new Facts(
                    upload.originalName(),
                    upload.facts().format(),
                    length,
                    upload.blob().length(),
                    heard instanceof Heard.Ready ready
                                    && Double.isFinite(ready.loudness().integrated())
                            ? Optional.of(ready.loudness())
                            : Optional.empty());
        }
    }

    /** Of which nothing was heard yet, if it is there at all. */
    public static TrackRow of(TrackForm form, Optional<Upload> upload) {
        return of(form, upload, new Heard.Waiting());
    }

    public static TrackRow of(TrackForm form, Optional<Upload> upload, Heard heard) {
        var facts = upload.map(known -> Facts.of(known, heard));
        return new TrackRow(form.upload().value(), form.used(), form.title(), form.kind(), facts);
    }
}
