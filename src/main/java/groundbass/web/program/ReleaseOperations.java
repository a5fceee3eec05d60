package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.effort.Budget;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import groundbass.release.BuildState;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.text.Message;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.student.file.ReleaseAnswers;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The releases of a lesson with their files; a new one is how a lesson goes out at once, and how it is corrected. */
final class ReleaseOperations implements PageGroup {
    private static final String OF_LESSON = Door.ROOT + "/lessons/{lesson}/releases";
    private static final String ONE = Door.ROOT + "/releases/{release}";

    private final Door door;
    private final Once once;
    private final Addressed addressed;
    private final Publisher publisher;
    private final Budget budget;
    private final ReleaseAnswers answers;

    ReleaseOperations(
            Door door, Once once, Addressed addressed, Publisher publisher, Budget budget, ReleaseAnswers answers) {
        this.door = door;
        this.once = once;
        this.addressed = addressed;
        this.publisher = publisher;
        this.budget = budget;
        this.answers = answers;
    }

    /**
     * A wish to bring a lesson out as it is saved.
     *
     * @param note what students are told of a correction; null for a lesson that is not out yet
     * @param byLetter whether those who took an earlier release, and agreed to it, get an e-mail; null for no
     * @param accept digests of remarks that may stand; null for none
     */
    private record Wish(String note, Boolean byLetter, List<String> accept) {
        ReleaseNote told() {
            return new ReleaseNote(
                    Objects.requireNonNullElse(note, ""), Objects.requireNonNullElse(byLetter, Boolean.FALSE));
        }
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(OF_LESSON, Role.EXEMPT, door.open(ProgramScope.READ, this::list));
        routes.post(OF_LESSON, Role.EXEMPT, door.open(ProgramScope.PUBLISH, this::bringOut));
        routes.get(ONE, Role.EXEMPT, door.open(ProgramScope.READ, this::show));
        routes.get(ONE + "/files/{name}", Role.EXEMPT, door.open(ProgramScope.READ, this::send));
    }

    private void list(Call call) {
        var items = addressed.releases().of(addressed.lesson(call).id()).stream()
                .map(release -> view(call, release).map())
                .toList();
        Answers.show(call, Members.of("items", items).map());
    }

    private void bringOut(Call call) throws IOException {
        var lesson = addressed.lesson(call);
        var key = once.key(call);
        var body = Incoming.json(call.ctx());
        once.answer(
                call,
                key,
                body,
                () -> bringOut(call, lesson, ProgramJson.read(ProgramJson.object(body.bytes()), Wish.class)));
    }

    private Once.Made bringOut(Call call, Episode lesson, Wish wish) {
        var accepted = Accepting.digests(wish.accept());
        // all of the lesson is read through
        var entered = Accepting.done(budget.spend(call.who().value(), () -> enter(call, lesson, wish, accepted)));
        var release = addressed.releases().find(entered).orElseThrow();
        return new Once.Made(
                HttpStatus.ACCEPTED, address(release), view(call, release).map());
    }

    /** As the desk's button does. */
    private Outcome<ReleaseId> enter(Call call, Episode lesson, Wish wish, List<String> accepted) {
        var seen = Seen.of(lesson.state());
        return lesson.isPublished()
                ? publisher.correct(call.who(), lesson.id(), wish.told(), seen, accepted)
                : publisher.bringOut(call.who(), lesson.id(), seen, accepted);
    }

    private void show(Call call) {
        var release = addressed.release(call);
        var files = addressed.releases().files().of(release.id()).stream()
                .filter(file -> file.role().isOffered())
                .map(file -> view(release, file))
                .toList();
        Answers.show(call, view(call, release).and("files", files).map());
    }

    private static String address(Release release) {
        return Door.ROOT + "/releases/" + release.id();
    }

    private Members view(Call call, Release release) {
        return Members.of("id", release.id().value())
                .and("lesson", release.episode().value())
                .and("number", release.spec().release())
                .and("state", state(release.state()))
                .and("createdAt", release.createdAt().toString())
                .and("publishedAt", release.publishedAt().map(Object::toString))
                .and("note", release.note().text())
                .and("failure", failure(release.state()).map(door.reader(call)::say));
    }

    private static String state(BuildState state) {
        if (state instanceof BuildState.Waiting) {
            return "waiting";
        }
        if (state instanceof BuildState.Building) {
            return "building";
        }
        if (state instanceof BuildState.Ready) {
            return "ready";
        }
        return state instanceof BuildState.Failed ? "failed" : "overtaken";
    }

    private static Optional<Message> failure(BuildState state) {
        return state instanceof BuildState.Failed failed
                ? Optional.of(failed.cause().message())
                : Optional.empty();
    }

    private static Map<String, Object> view(Release release, ReleaseFile file) {
        return Members.of("name", file.name())
                .and("role", file.role().value())
                .and("mediaType", file.mediaType())
                .and("bytes", file.size())
                .and("sha256", file.sha256().hex())
                .and("address", address(release) + "/files/" + file.name())
                .map();
    }

    /** An educator's own program takes nothing that is counted. */
    private void send(Call call) throws IOException {
        var release = addressed.release(call);
        var file = addressed
                .releases()
                .files()
                .named(release.id(), call.ctx().pathParam("name"))
                .filter(known -> known.role().isOffered())
                .orElseThrow(NotFoundResponse::new);
        answers.of(release.id(), file).withDownloadName(file.name()).send(call.ctx());
    }
}
