package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.form.Outcome;
import groundbass.publishing.Seen;
import groundbass.publishing.TakingBack;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.Objects;

/** That a lesson was taken back from students: there or not there, made and ended. */
final class WithdrawalOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/lessons/{lesson}/withdrawal";

    private final Door door;
    private final Addressed addressed;
    private final TakingBack takingBack;

    WithdrawalOperations(Door door, Addressed addressed, TakingBack takingBack) {
        this.door = door;
        this.addressed = addressed;
        this.takingBack = takingBack;
    }

    /** @param why for students; null for nothing */
    private record Reason(String why) {
        String text() {
            return Objects.requireNonNullElse(why, "");
        }
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::show));
        routes.put(PATH, Role.EXEMPT, door.open(ProgramScope.PUBLISH, this::takeBack));
        routes.delete(PATH, Role.EXEMPT, door.open(ProgramScope.PUBLISH, this::putBack));
    }

    private void show(Call call) {
        Answers.show(call, LessonView.withdrawal(addressed.lesson(call)).orElseThrow(NotFoundResponse::new));
    }

    private void takeBack(Call call) throws IOException {
        var lesson = addressed.lesson(call);
        var asked = ProgramJson.read(ProgramJson.object(Incoming.bytes(call.ctx(), Answers.JSON)), Reason.class);
        demand(call, lesson);
        done(takingBack.takeBack(call.who(), lesson, asked.text()));
        Answers.tell(
                call,
                HttpStatus.CREATED,
                LessonView.withdrawal(addressed.lesson(call)).orElseThrow());
    }

    private void putBack(Call call) {
        var lesson = addressed.lesson(call);
        demand(call, lesson);
        done(takingBack.putBack(call.who(), lesson));
        Answers.nothing(call);
    }

    private static void demand(Call call, Episode lesson) {
        Preconditions.of(call.ctx()).demand(LessonView.withdrawal(lesson).map(Answers::tag));
    }

    /**
     * A lesson that is not out cannot be taken back, nor put back one that is: a conflict with how it stands. Where it was
     * taken back, or put back, since what the program has seen was compared, it is no longer that.
     */
    private static void done(Outcome<EpisodeId> outcome) {
        if (Seen.isOtherwise(outcome.problems())) {
            throw Preconditions.failed();
        }
        if (outcome.result().isEmpty()) {
            boolean ofMember = outcome.problems().stream()
                    .anyMatch(problem -> !problem.field().isEmpty());
            throw Refusal.of(ofMember ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.CONFLICT, outcome.problems());
        }
    }
}
