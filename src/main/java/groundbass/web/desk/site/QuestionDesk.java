package groundbass.web.desk.site;

import groundbass.audience.question.Question;
import groundbass.audience.question.QuestionEnd;
import groundbass.audience.question.QuestionId;
import groundbass.audience.question.Questions;
import groundbass.audience.question.Topic;
import groundbass.audience.question.TypedQuestion;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.form.FieldProblem;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.room.Room;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The questions of students: where in which line, and what to answer. */
public final class QuestionDesk implements PageGroup {
    private static final String PATH = "/desk/questions";
    /** The field of an answer to what another window has settled, or what went with its account. */
    private static final String UNSENT = "unsent";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final Questions questions;
    private final Episodes episodes;

    public QuestionDesk(DeskContext desk, Reauthentication reauthentication, Questions questions, Episodes episodes) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.questions = questions;
        this.episodes = episodes;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, Optional.empty()));
        routes.get(DeskContext.EPISODE + "/questions", Role.EDUCATOR, this::ofLesson);
        routes.post(
                PATH + "/{id}", Role.ANYONE, ctx -> reauthentication.writer(ctx).ifPresent(who -> settle(ctx, who)));
    }

    private void ofLesson(Context ctx) {
        show(ctx, Optional.of(desk.episode(ctx).id()));
    }

    private void show(Context ctx, Optional<EpisodeId> lesson) {
        desk.pages().show(ctx, "desk/questions", view(desk.educator(ctx), lesson, Typed.NOTHING, FieldProblems.NONE));
    }

    private void settle(Context ctx, EducatorId who) {
        var id = QuestionId.parse(ctx.pathParam("id")).orElseThrow(NotFoundResponse::new);
        String answer = FormParameters.text(ctx, "answer").strip();
        var outcome =
                FormParameters.text(ctx, "then").equals("corrected") ? QuestionEnd.CORRECTED : QuestionEnd.ANSWERED;
        var problem = problem(id, answer, outcome);
        if (problem.isPresent()) {
            showAgain(ctx, who, new Typed(id.value(), answer), problem.get());
            return;
        }
        boolean settled = questions.settle(who, id, outcome, answer);
        if (!settled && !answer.isEmpty()) {
            showAgain(ctx, who, new Typed(UNSENT, answer), FieldProblem.of(UNSENT, "desk.questions.over"));
            return;
        }
        Flash.say(ctx, settled ? "question.settled" : "question.over");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private void showAgain(Context ctx, EducatorId who, Typed typed, FieldProblem problem) {
        var problems = new FieldProblems(List.of(problem));
        desk.pages().showAgain(ctx, "desk/questions", view(who, Optional.empty(), typed, problems));
    }

    private static Optional<FieldProblem> problem(QuestionId id, String answer, QuestionEnd outcome) {
        String field = "answer-" + id.value();
        if (answer.length() > TypedQuestion.LONGEST) {
            return Optional.of(FieldProblem.of(field, "question.problem.long", answer.length(), TypedQuestion.LONGEST));
        }
        return answer.isEmpty() && outcome == QuestionEnd.ANSWERED
                ? Optional.of(FieldProblem.of(field, "desk.questions.empty"))
                : Optional.empty();
    }

    private View view(EducatorId owner, Optional<EpisodeId> lesson, Typed typed, FieldProblems problems) {
        var asked = lesson.map(id -> questions.to(owner, id)).orElseGet(() -> questions.to(owner));
        var rows = asked.stream()
                .map(question -> row(question, typed.to(question.id().value())))
                .toList();
        var title = lesson.flatMap(episodes::find).map(found -> found.title());
        return new View(title, rows, typed.to(UNSENT), problems);
    }

    private static Row row(Question question, String typed) {
        return new Row(
                question.id().value(),
                question.lesson(),
                way(question),
                question.at(),
                question.topic() == Topic.RIGHTS,
                question.email().value(),
                question.words(),
                question.askedAt(),
                question.outcome().map(outcome -> Message.of("desk.questions." + outcome.value())),
                question.answer(),
                typed);
    }

    /** The bar in the room where its line is written. */
    private static String way(Question question) {
        String room = question.exercise()
                .map(number -> Room.EXERCISES.way() + "/" + number)
                .orElseGet(Room.LINE::way);
        String bar = question.place().map(place -> "#bar-" + place.bar()).orElse("");
        return DeskContext.EPISODE.replace("{id}", question.episode().value()) + room + bar;
    }

    /** An answer that was typed, and to which question; {@link #UNSENT} where that waits no more. */
    private record Typed(String question, String answer) {
        static final Typed NOTHING = new Typed("", "");

        String to(String other) {
            return question.equals(other) ? answer : "";
        }
    }

    /**
     * The page.
     *
     * @param lesson whose questions alone are shown; empty for all
     * @param unsent an answer to what waits no more; mostly empty
     */
    public record View(Optional<String> lesson, List<Row> rows, String unsent, FieldProblems problems) {}

    /**
     * A question.
     *
     * @param way to its bar
     * @param rights whether it reports a rights problem
     * @param outcome empty while it waits
     * @param typed an answer that could not be sent yet
     */
    public record Row(
            String id,
            String lesson,
            String way,
            Message place,
            boolean rights,
            String email,
            String words,
            Instant asked,
            Optional<Message> outcome,
            Optional<String> answer,
            String typed) {}
}
