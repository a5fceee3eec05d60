package groundbass.web.program;

import groundbass.catalog.ZoneNames;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.effort.Budget;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The hour for which a lesson is promised: there or not there, made, moved and taken back. */
final class PromiseOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/lessons/{lesson}/promise";

    private final Door door;
    private final Addressed addressed;
    private final Publisher publisher;
    private final Budget budget;

    PromiseOperations(Door door, Addressed addressed, Publisher publisher, Budget budget) {
        this.door = door;
        this.addressed = addressed;
        this.publisher = publisher;
        this.budget = budget;
    }

    /**
     * An hour as sent.
     *
     * @param hour on the clocks of the zone: {@code 2026-05-04T18:00}
     * @param zone null for the zone of the series
     * @param accept digests of remarks that may stand; null for none
     */
    private record Hour(String hour, String zone, List<String> accept) {
        LocalDateTime local() {
            return FormParameters.time(Objects.requireNonNullElse(hour, ""), LocalDateTime::parse)
                    .orElseThrow(() -> Refusal.member("hour", "program.refused.hour"));
        }

        ZoneId zone(ZoneId usual) {
            return Optional.ofNullable(zone)
                    .map(name -> ZoneNames.read(name)
                            .orElseThrow(() -> Refusal.member("zone", "catalog.problem.zone", name)))
                    .orElse(usual);
        }
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::show));
        routes.put(PATH, Role.EXEMPT, door.open(ProgramScope.PUBLISH, this::promise));
        routes.delete(PATH, Role.EXEMPT, door.open(ProgramScope.PUBLISH, this::withdraw));
    }

    private void show(Call call) {
        Answers.show(call, LessonView.promise(addressed.lesson(call)).orElseThrow(NotFoundResponse::new));
    }

    private void promise(Call call) throws IOException {
        var lesson = addressed.lesson(call);
        var asked = ProgramJson.read(ProgramJson.object(Incoming.bytes(call.ctx(), Answers.JSON)), Hour.class);
        var local = asked.local();
        var zone = asked.zone(addressed.seriesOf(lesson).zone());
        var seen = seen(call, lesson);
        var accepted = Accepting.digests(asked.accept());
        // all of the lesson is read through
        Accepting.done(budget.spend(
                call.who().value(), () -> publisher.schedule(call.who(), lesson.id(), local, zone, seen, accepted)));
        var status = LessonView.promise(lesson).isPresent() ? HttpStatus.OK : HttpStatus.CREATED;
        Answers.tell(call, status, LessonView.promise(addressed.lesson(call)).orElseThrow());
    }

    private void withdraw(Call call) {
        var lesson = addressed.lesson(call);
        Accepting.done(publisher.withdraw(call.who(), lesson.id(), seen(call, lesson)));
        Answers.nothing(call);
    }

    /** How the lesson stands that was found, where that is what the program has seen; the service asks once more. */
    private static Seen seen(Call call, Episode lesson) {
        Preconditions.of(call.ctx()).demand(LessonView.promise(lesson).map(Answers::tag));
        return Seen.of(lesson.state());
    }
}
