package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Pictures;
import groundbass.catalog.upload.TakingOut;
import groundbass.document.PictureId;
import groundbass.effort.Budget;
import groundbass.form.Outcome;
import groundbass.lesson.NotePictures;
import groundbass.store.temporary.Scratch;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Pictures for the notes of a lesson: sent as bare bytes with their words. Where the notes show one, the notes say. */
final class PictureOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/lessons/{lesson}/pictures";
    private static final Set<String> MEDIA_TYPES = Set.of("image/png", "image/jpeg", "application/octet-stream");

    private final Door door;
    private final Once once;
    private final Addressed addressed;
    private final EpisodeService writing;
    private final Pictures pictures;
    private final TakingOut takingOut;
    private final RateLimits limits;
    private final Budget budget;

    PictureOperations(
            Door door,
            Once once,
            Addressed addressed,
            EpisodeService writing,
            Pictures pictures,
            TakingOut takingOut,
            RateLimits limits,
            Budget budget) {
        this.door = door;
        this.once = once;
        this.addressed = addressed;
        this.writing = writing;
        this.pictures = pictures;
        this.takingOut = takingOut;
        this.limits = limits;
        this.budget = budget;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::list));
        routes.post(PATH, Role.EXEMPT, door.open(ProgramScope.WRITE, this::take));
        routes.delete(PATH + "/{picture}", Role.EXEMPT, door.open(ProgramScope.WRITE, this::takeOut));
    }

    private void list(Call call) {
        var lesson = addressed.lesson(call);
        String notes = notes(call, lesson);
        var items = pictures.of(lesson.id()).stream()
                .map(picture -> view(picture, notes))
                .toList();
        Answers.show(call, Members.of("items", items).map());
    }

    private String notes(Call call, Episode lesson) {
        return writing.draft(call.who(), lesson.id()).orElseThrow().document().notes();
    }

    private static Map<String, Object> view(Picture picture, String notes) {
        return Members.of("id", picture.id().value())
                .and("file", picture.originalName())
                .and("words", picture.words())
                .and("typed", NotePictures.typed(picture.id(), picture.words()))
                .and("mediaType", picture.format().mediaType())
                .and("width", picture.wide())
                .and("height", picture.high())
                .and("bytes", picture.blob().length())
                .and("sha256", picture.blob().sha256().hex())
                .and("used", notes.contains(NotePictures.address(picture.id())))
                .map();
    }

    private void take(Call call) throws IOException {
        var lesson = addressed.lesson(call);
        var key = once.key(call);
        Incoming.demandFile(call.ctx(), MEDIA_TYPES, Pictures.LIMIT);
        limits.demand(call.ctx(), Limit.UPLOAD, "educator " + call.who());
        try (var place = Scratch.open()) {
            var body = Incoming.file(call.ctx(), place, Pictures.LIMIT);
            once.answer(call, key, body, () -> take(call, lesson, body.bytes()));
        }
    }

    private Once.Made take(Call call, Episode lesson, byte[] sent) {
        String name = asked(call, "name");
        String words = asked(call, "words");
        Incoming.demandText(words);
        var outcome = budget.spend(call.who().value(), () -> accepted(call, lesson, name, words, sent));
        var picture =
                outcome.result().orElseThrow(() -> Refusal.of(HttpStatus.UNPROCESSABLE_CONTENT, outcome.problems()));
        return new Once.Made(
                HttpStatus.CREATED, LessonView.address(lesson) + "/pictures", view(picture, notes(call, lesson)));
    }

    private static String asked(Call call, String name) {
        return Optional.ofNullable(call.ctx().queryParam(name)).orElse("");
    }

    /** To decode a picture costs as much as to draw a sheet. */
    private Outcome<Picture> accepted(Call call, Episode lesson, String name, String words, byte[] sent) {
        try {
            return pictures.accept(call.who(), lesson.id(), name, words, sent);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void takeOut(Call call) {
        var lesson = addressed.lesson(call);
        PictureId.parse(call.ctx().pathParam("picture"))
                .flatMap(id -> takingOut.picture(call.who(), lesson.id(), id).result())
                .orElseThrow(NotFoundResponse::new);
        Answers.nothing(call);
    }
}
