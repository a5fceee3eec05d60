package groundbass.web.desk.site;

import groundbass.audience.question.Asked;
import groundbass.audience.question.Question;
import groundbass.audience.question.QuestionEnd;
import groundbass.audience.question.QuestionId;
import groundbass.audience.question.Questions;
import groundbass.audience.question.Topic;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.form.FieldProblem;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
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

    private final DeskContext desk;
    private final Questions questions;
    private final Episodes episodes;

    public QuestionDesk(DeskContext desk, Questions questions, Episodes episodes) {
        this.desk = desk;
        this.questions = questions;
        this.episodes = episodes;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, Optional.empty()));
        routes.get(DeskContext.EPISODE + "/questions", Role.EDUCATOR, this::ofLesson);
        routes.post(PATH + "/{id}", Role.EDUCATOR, this::settle);
    }

    private void ofLesson(Context ctx) {
        show(ctx, Optional.of(desk.episode(ctx).id()));
    }

    private void show(Context ctx, Optional<EpisodeId> lesson) {
        desk.pages().show(ctx, "desk/questions", view(ctx, lesson, "", "", FieldProblems.NONE));
    }

    private void settle(Context ctx) {
        var id = QuestionId.parse(ctx.pathParam("id")).orElseThrow(NotFoundResponse::new);
        String answer = FormParameters.text(ctx, "answer").strip();
        var outcome =
                FormParameters.text(ctx, "then").equals("corrected") ? QuestionEnd.CORRECTED : QuestionEnd.ANSWERED;
        var problem = problem(id, answer, outcome);
        if (problem.isPresent()) {
            var problems = new FieldProblems(List.of(problem.get()));
            desk.pages().showAgain(ctx, "desk/questions", view(ctx, Optional.empty(), id.value(), answer, problems));
            return;
        }
        boolean settled = questions.settle(desk.educator(ctx), id, outcome, answer);
        Flash.say(ctx, settled ? "question.settled" : "question.over");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private static Optional<FieldProblem> problem(QuestionId id, String answer, QuestionEnd outcome) {
        String field = "answer-" + id.value();
        if (answer.length() > Asked.LONGEST) {
            return Optional.of(FieldProblem.of(field, "question.problem.long", answer.length(), Asked.LONGEST));
        }
        return answer.isEmpty() && outcome == QuestionEnd.ANSWERED
                ? Optional.of(FieldProblem.of(field, "desk.questions.empty"))
                : Optional.empty();
    }

    /** With what was typed as an answer to one of them. */
    private View view(Context ctx, Optional<EpisodeId> lesson, String answered, String typed, FieldProblems problems) {
        var owner = desk.educator(ctx);
        var asked = lesson.map(id -> questions.to(owner, id)).orElseGet(() -> questions.to(owner));
        var rows = asked.stream()
                .map(question -> row(question, question.id().value().equals(answered) ? typed : ""))
                .toList();
        var title = lesson.flatMap(episodes::find).map(found -> found.title());
        return new View(title, rows, problems);
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

    /** @param lesson whose questions alone are shown; empty for all */
    public record View(Optional<String> lesson, List<Row> rows, FieldProblems problems) {}

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
