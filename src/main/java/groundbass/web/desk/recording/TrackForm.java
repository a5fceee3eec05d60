package groundbass.web.desk.recording;

import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.UploadId;
import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What is said of one recording, and whether it belongs to the lesson. */
public record TrackForm(UploadId upload, boolean used, String title, BackingTrack.Kind kind) {
    public static List<TrackForm> read(Context ctx) {
        var used = ctx.formParams("trackUsed");
        return ctx.formParams("track").stream()
                .flatMap(id -> UploadId.parse(id).stream())
                .map(id -> read(ctx, id, used.contains(id.value())))
                .toList();
    }

    private static TrackForm read(Context ctx, UploadId id, boolean used) {
        return new TrackForm(
                id,
                used,
                FormParameters.text(ctx, "trackTitle-" + id),
                kind(FormParameters.text(ctx, "trackKind-" + id)));
    }

    private static BackingTrack.Kind kind(String name) {
        return Stream.of(BackingTrack.Kind.values())
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElse(BackingTrack.Kind.OTHER);
    }

    public static TrackForm of(BackingTrack track) {
        return new TrackForm(track.upload(), true, track.title(), track.kind());
    }

    /** A recording that just came in, or that no lesson uses. */
    public static TrackForm of(Upload upload, boolean used) {
        String name = upload.originalName().replaceFirst("\\.[A-Za-z0-9]{1,5}$", "");
        return new TrackForm(upload.id(), used, name, BackingTrack.Kind.FULL);
    }

    /** As the document keeps it; empty where it is not used. */
    public Optional<BackingTrack> track(Upload content) {
        String name = title.isBlank() ? content.originalName() : title.strip();
        return used ? Optional.of(new BackingTrack(upload, content.blob().sha256(), name, kind)) : Optional.empty();
    }
}
