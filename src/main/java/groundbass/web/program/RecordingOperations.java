package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.UploadId;
import groundbass.store.temporary.Scratch;
import groundbass.web.desk.recording.NewTrack;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Recordings of a lesson: sent as bare bytes, judged by what they are, and put into the draft. */
final class RecordingOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/lessons/{lesson}/recordings";

    /** Whatever it is called: what a recording is, its bytes tell. */
    private static final Set<String> MEDIA_TYPES = Set.of(
            "audio/mpeg",
            "audio/wav",
            "audio/x-wav",
            "audio/vnd.wave",
            "audio/flac",
            "audio/x-flac",
            "application/octet-stream");

    private final Door door;
    private final Once once;
    private final Addressed addressed;
    private final EpisodeService writing;
    private final Uploads uploads;
    private final TakingOut takingOut;
    private final RateLimits limits;

    RecordingOperations(
            Door door,
            Once once,
            Addressed addressed,
            EpisodeService writing,
            Uploads uploads,
            TakingOut takingOut,
            RateLimits limits) {
        this.takingOut = takingOut;
        this.door = door;
        this.once = once;
        this.addressed = addressed;
        this.writing = writing;
        this.uploads = uploads;
        this.limits = limits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::list));
        routes.post(PATH, Role.EXEMPT, door.open(ProgramScope.WRITE, this::take));
        routes.delete(PATH + "/{recording}", Role.EXEMPT, door.open(ProgramScope.WRITE, this::takeOut));
    }

    private void list(Call call) {
        var lesson = addressed.lesson(call);
        Map<String, BackingTrack> used =
                writing.draft(call.who(), lesson.id()).orElseThrow().document().backingTracks().stream()
                        .collect(Collectors.toMap(
                                track -> track.upload().value(), Function.identity(), (one, next) -> one));
        var items = uploads.of(lesson.id()).stream()
                .map(upload ->
                        view(upload, Optional.ofNullable(used.get(upload.id().value()))))
                .toList();
        Answers.show(call, Members.of("items", items).map());
    }

    /** @param track what the draft says of it; empty where it does not use it */
    private static Map<String, Object> view(Upload upload, Optional<BackingTrack> track) {
        return Members.of("id", upload.id().value())
                .and("file", upload.originalName())
                .and("mediaType", upload.mediaType())
                .and("bytes", upload.blob().length())
                .and("sha256", upload.blob().sha256().hex())
                .and("seconds", upload.facts().duration().toMillis() / 1000.0)
                .and("used", track.isPresent())
                .and("title", track.map(BackingTrack::title))
                .and("kind", track.map(BackingTrack::kind).map(RecordingOperations::word))
                .map();
    }

    private static String word(BackingTrack.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private void take(Call call) throws IOException {
        var lesson = addressed.lesson(call);
        var key = once.key(call);
        String name = Optional.ofNullable(call.ctx().queryParam("name")).orElse("");
        var kind = kind(Optional.ofNullable(call.ctx().queryParam("kind")));
        Incoming.demandFile(call.ctx(), MEDIA_TYPES, Uploads.LIMIT);
        limits.demand(call.ctx(), Limit.UPLOAD, "educator " + call.who());
        try (var place = Scratch.open()) {
            var body = Incoming.file(call.ctx(), place, Uploads.LIMIT);
            once.answer(call, key, body, () -> take(call, lesson, name, kind, body));
        }
    }

    private void takeOut(Call call) {
        var lesson = addressed.lesson(call);
        UploadId.parse(call.ctx().pathParam("recording"))
                .flatMap(id -> takingOut.recording(call.who(), lesson.id(), id).result())
                .orElseThrow(NotFoundResponse::new);
        Answers.nothing(call);
    }

    private static BackingTrack.Kind kind(Optional<String> word) {
        return word.map(asked -> Stream.of(BackingTrack.Kind.values())
                        .filter(kind -> word(kind).equals(asked))
                        .findFirst()
                        .orElseThrow(() -> Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.kind")))
                .orElse(BackingTrack.Kind.FULL);
    }

    private Once.Made take(Call call, Episode lesson, String name, BackingTrack.Kind kind, Incoming body)
            throws IOException {
        try (var in = body.open()) {
            var outcome = uploads.accept(call.who(), lesson.id(), name, in);
            var upload = outcome.result()
                    .orElseThrow(() -> Refusal.of(HttpStatus.UNPROCESSABLE_CONTENT, outcome.problems()));
            // as the desk does with a recording that a form without script has sent
            var track = new NewTrack(upload, kind);
            track.into(writing, call.who(), lesson.id()).result().orElseThrow(NotFoundResponse::new);
            return new Once.Made(
                    HttpStatus.CREATED,
                    LessonView.address(lesson) + "/recordings",
                    view(upload, Optional.of(track.track())));
        }
    }
}
