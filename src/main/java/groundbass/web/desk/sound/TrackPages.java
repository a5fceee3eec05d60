package groundbass.web.desk.sound;

import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.form.Outcome;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.ScriptUploads;
import groundbass.web.desk.recording.NewTrack;
import groundbass.web.desk.recording.TrackForm;
import groundbass.web.desk.recording.TrackRow;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Takes recordings. A script sends the bare bytes, which run straight into the store; a form without script sends a
 * part of a form, which Javalin lays on disk first.
 */
public final class TrackPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/tracks";

    private final DeskContext desk;
    private final SoundPages room;
    private final EpisodeService writing;
    private final Uploads uploads;
    private final ScriptUploads sending;

    public TrackPages(DeskContext desk, SoundPages room, EpisodeService writing, Uploads uploads, RateLimits limits) {
        this.desk = desk;
        this.room = room;
        this.writing = writing;
        this.uploads = uploads;
        this.sending = new ScriptUploads(desk, limits);
    }

    @Override
    public void addTo(Routes routes) {
        routes.put(PATH, Role.EDUCATOR, this::takeBytes);
        routes.postFiles(PATH, Role.EDUCATOR, this::takePart);
    }

    private void takeBytes(Context ctx) throws IOException {
        var who = sending.permitted(ctx);
        var episode = desk.episode(ctx);
        if (ctx.contentLength() > Uploads.LIMIT) {
            sending.refuse(ctx, HttpStatus.CONTENT_TOO_LARGE, tooLarge());
            return;
        }
        String name = Optional.ofNullable(ctx.queryParam("name")).orElse("");
        var outcome = uploads.accept(who, episode.id(), name, ctx.bodyInputStream());
        if (outcome.result().isPresent()) {
            var upload = outcome.result().get();
            ctx.status(HttpStatus.CREATED);
            var row = TrackRow.of(TrackForm.of(upload, true), Optional.of(upload));
            desk.pages()
                    .show(
                            ctx,
                            "desk/track",
                            new TrackView(row, List.of(BackingTrack.Kind.values()), DeskContext.path(ctx)));
        } else {
            sending.refuse(ctx, HttpStatus.UNPROCESSABLE_CONTENT, outcome);
        }
    }

    private void takePart(Context ctx) throws IOException {
        var who = sending.permitted(ctx);
        var episode = desk.episode(ctx);
        var part = ctx.uploadedFile("file");
        if (part == null || part.filename().isBlank()) {
            room.showAgain(
                    ctx, Outcome.refused("file", "catalog.problem.missing").problems());
            return;
        }
        try (var in = part.content()) {
            var outcome = uploads.accept(who, episode.id(), part.filename(), in);
            if (outcome.result().isPresent()) {
                new NewTrack(outcome.result().get(), BackingTrack.Kind.FULL)
                        .into(writing, who, episode.id())
                        .result()
                        .orElseThrow(NotFoundResponse::new);
                room.back(ctx, "desk.track.taken");
            } else {
                room.showAgain(ctx, outcome.problems());
            }
        }
    }

    private static Outcome<Upload> tooLarge() {
        return Outcome.refused("file", "catalog.audio.too-large", Uploads.LIMIT / 1_000_000);
    }

    /** What the script puts into the page. */
    public record TrackView(TrackRow track, List<BackingTrack.Kind> kinds, String path) {}
}
