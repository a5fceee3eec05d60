package groundbass.web.desk.notes;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Pictures;
import groundbass.document.PictureId;
import groundbass.form.Outcome;
import groundbass.lesson.NotePictures;
import groundbass.store.Blobs;
import groundbass.web.answer.FileAnswer;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.ScriptUploads;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;

/**
 * Takes pictures for notes, and shows them at the desk. A script gets what is to be typed, and sets it where the writer
 * is; a form without script finds it at the end of the notes.
 */
public final class PicturePages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/pictures";
    private static final String WORDS = "words";

    private final DeskContext desk;
    private final NotesPages room;
    private final EpisodeService writing;
    private final Pictures pictures;
    private final Blobs blobs;
    private final ScriptUploads sending;

    public PicturePages(
            DeskContext desk,
            NotesPages room,
            EpisodeService writing,
            Pictures pictures,
            Blobs blobs,
            RateLimits limits) {
        this.desk = desk;
        this.room = room;
        this.writing = writing;
        this.pictures = pictures;
        this.blobs = blobs;
        this.sending = new ScriptUploads(desk, limits);
    }

    @Override
    public void addTo(Routes routes) {
        routes.put(PATH, Role.EDUCATOR, this::takeBytes);
        routes.postFiles(PATH, Role.EDUCATOR, this::takePart);
        routes.get(PATH + "/{picture}", Role.EDUCATOR, this::send);
    }

    private void takeBytes(Context ctx) throws IOException {
        var who = sending.permitted(ctx);
        var episode = desk.episode(ctx);
        if (ctx.contentLength() > Pictures.LIMIT) {
            sending.refuse(ctx, HttpStatus.CONTENT_TOO_LARGE, tooLarge());
            return;
        }
        String name = Optional.ofNullable(ctx.queryParam("name")).orElse("");
        String words = Optional.ofNullable(ctx.queryParam(WORDS)).orElse("");
        var outcome = take(who, episode.id(), name, words, ctx.bodyInputStream());
        if (outcome.result().isPresent()) {
            var picture = outcome.result().get();
            ctx.status(HttpStatus.CREATED).header("Cache-Control", "no-store");
            ctx.json(Map.of("typed", NotePictures.typed(picture.id(), picture.words())));
        } else {
            sending.refuse(ctx, HttpStatus.UNPROCESSABLE_CONTENT, outcome);
        }
    }

    private void takePart(Context ctx) throws IOException {
        var who = sending.permitted(ctx);
        var episode = desk.episode(ctx);
        String words = FormParameters.text(ctx, WORDS);
        var part = ctx.uploadedFile("picture");
        if (part == null || part.filename().isBlank()) {
            room.showAgain(
                    ctx, Outcome.refused("picture", "catalog.problem.missing").problems(), words);
            return;
        }
        var outcome = taken(who, episode.id(), words, part);
        if (outcome.result().isPresent()) {
            atTheEnd(who, episode.id(), outcome.result().get());
            room.back(ctx, "desk.picture.taken");
        } else {
            room.showAgain(ctx, outcome.problems(), words);
        }
    }

    private Outcome<Picture> taken(EducatorId who, EpisodeId episode, String words, UploadedFile part)
            throws IOException {
        try (var in = part.content()) {
            return take(who, episode, part.filename(), words, in);
        }
    }

    /**
     * To decode a picture costs as much as to draw a sheet, and is counted as that. To wait for a slow sender costs
     * nothing, so that all of the file is here before.
     */
    private Outcome<Picture> take(EducatorId who, EpisodeId episode, String name, String words, InputStream in)
            throws IOException {
        byte[] sent = in.readNBytes(Pictures.LIMIT + 1);
        try {
            return desk.work(who, () -> accept(who, episode, name, words, sent));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private Outcome<Picture> accept(EducatorId who, EpisodeId episode, String name, String words, byte[] sent) {
        try {
            return pictures.accept(who, episode, name, words, sent);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void atTheEnd(EducatorId who, EpisodeId episode, Picture picture) {
        String typed = NotePictures.typed(picture.id(), picture.words());
        writing.saveDraft(who, episode, (stored, changed) -> true, before -> {
                    String notes = before.notes().stripTrailing();
                    String gap = notes.isEmpty() ? "" : "\n\n";
                    return before.edit().notes(notes + gap + typed + "\n").done();
                })
                .result()
                .orElseThrow(NotFoundResponse::new);
    }

    /** For the educator alone; an id is found by nobody who has not seen it. */
    private void send(Context ctx) throws IOException {
        desk.episode(ctx);
        var picture = PictureId.parse(ctx.pathParam("picture"))
                .flatMap(pictures::find)
                .orElseThrow(NotFoundResponse::new);
        FileAnswer.of(blobs, picture.blob().sha256(), picture.format().mediaType())
                .withCacheControl("private, max-age=86400")
                .send(ctx);
    }

    private static Outcome<Picture> tooLarge() {
        return Outcome.refused("picture", "catalog.picture.too-large", Pictures.LIMIT / 1_000_000);
    }
}
