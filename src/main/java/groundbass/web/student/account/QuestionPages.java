package groundbass.web.student.account;

import groundbass.audience.question.AskedPlace;
import groundbass.audience.question.Questions;
import groundbass.audience.question.Topic;
import groundbass.audience.question.TypedQuestion;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.form.FieldProblem;
import groundbass.post.Postman;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.shell.limit.WaitResponse;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.WaitView;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A question to those who teach, at a bar and count of a lesson, and the report of a rights problem. Who asks has signed in,
 * so that their address is proven and the answer finds them. Sending lets anyone through: what was typed comes back to whose
 * sign-in has run out meanwhile.
 */
public final class QuestionPages implements PageGroup {
    private static final String LINE = "line";

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final Questions questions;
    private final Episodes episodes;
    private final RateLimits limits;
    private final Optional<Postman> toDesk;

    /** @param toDesk where no letter leaves: who lays it on the desk, so that it is read there at once */
    public QuestionPages(
            Pages pages,
            AccessFilter accessFilter,
            Questions questions,
            Episodes episodes,
            RateLimits limits,
            Optional<Postman> toDesk) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.questions = questions;
        this.episodes = episodes;
        this.limits = limits;
        this.toDesk = toDesk;
    }

    @Override
    public void addTo(Routes routes) {
        for (var topic : Topic.values()) {
            routes.get(path("{id}", topic), Role.STUDENT, ctx -> show(ctx, topic));
            routes.post(path("{id}", topic), Role.ANYONE, ctx -> send(ctx, topic));
        }
    }

    private static String path(String episode, Topic topic) {
        return "/e/" + episode
                + switch (topic) {
                    case MUSIC -> "/ask";
                    case RIGHTS -> "/rights-problem";
                };
    }

    private void show(Context ctx, Topic topic) {
        var typed = new Typed(
                line(Optional.ofNullable(ctx.queryParam("line"))),
                Optional.ofNullable(ctx.queryParam("place"))
                        .flatMap(AskedPlace::read)
                        .map(AskedPlace::value)
                        .orElse(""),
                "");
        pages.show(ctx, "student/ask", view(lesson(ctx), topic, typed, FieldProblems.NONE));
    }

    private void send(Context ctx, Topic topic) {
        var lesson = lesson(ctx);
        var typed = new Typed(
                line(Optional.ofNullable(ctx.formParam("line"))),
                Optional.ofNullable(ctx.formParam("place")).orElse("").strip(),
                Optional.ofNullable(ctx.formParam("words")).orElse("").strip());
        var student = accessFilter.principal(ctx).student();
        var problems = problems(typed, student);
        if (!problems.isEmpty()) {
            pages.showAgain(ctx, "student/ask", view(lesson, topic, typed, new FieldProblems(problems)));
            return;
        }
        var who = student.orElseThrow();
        var refused = limits.take(Limit.QUESTION, who.value()).map(WaitResponse::tooOften);
        if (refused.isPresent()) {
            showAgain(ctx, view(lesson, topic, typed, tooMany(refused.get())), refused.get());
            return;
        }
        questions.ask(
                who,
                new TypedQuestion(lesson.id(), topic, typed.line(), AskedPlace.read(typed.place()), typed.words()));
        toDesk.ifPresent(Postman::deliverDue);
        Flash.say(ctx, "question.sent");
        ctx.redirect("/e/" + lesson.id(), HttpStatus.SEE_OTHER);
    }

    /** The wait may last a day: the form stands there again, to be read and kept elsewhere. */
    private void showAgain(Context ctx, View view, WaitResponse refused) {
        ctx.status(refused.getStatus()).header("Retry-After", String.valueOf(refused.seconds()));
        pages.show(ctx, "student/ask", view);
    }

    private static FieldProblems tooMany(WaitResponse refused) {
        return new FieldProblems(List.of(FieldProblem.of(
                "words", "question.problem.many", Limit.QUESTION.times, WaitView.words(refused.seconds()))));
    }

    private static List<FieldProblem> problems(Typed typed, Optional<StudentId> student) {
        var problems = new ArrayList<FieldProblem>();
        if (!typed.place().isEmpty() && AskedPlace.read(typed.place()).isEmpty()) {
            problems.add(FieldProblem.of("place", "question.problem.place", typed.place()));
        }
        if (typed.words().isEmpty()) {
            problems.add(FieldProblem.of("words", "question.problem.empty"));
        } else if (typed.words().length() > TypedQuestion.LONGEST) {
            problems.add(FieldProblem.of(
                    "words", "question.problem.long", typed.words().length(), TypedQuestion.LONGEST));
        }
        if (student.isEmpty()) {
            problems.add(FieldProblem.of("words", "question.problem.signin"));
        }
        return problems;
    }

    private Episode lesson(Context ctx) {
        return EpisodeId.parse(ctx.pathParam("id"))
                .flatMap(episodes::find)
                .filter(Episode::isOut)
                .orElseThrow(NotFoundResponse::new);
    }

    private static String line(Optional<String> text) {
        return text.filter(name -> name.matches("line|exercise-[1-9][0-9]{0,2}"))
                .orElse(LINE);
    }

    private static View view(Episode lesson, Topic topic, Typed typed, FieldProblems problems) {
        return new View(
                path(lesson.id().value(), topic),
                "/e/" + lesson.id(),
                lesson.title(),
                topic == Topic.RIGHTS,
                typed,
                TypedQuestion.LONGEST,
                problems);
    }

    /** What stands in the fields. */
    public record Typed(String line, String place, String words) {
        /** Its number among the exercises; 0 for the lesson's own line. */
        public int exercise() {
            return line.equals(LINE) ? 0 : Integer.parseInt(line.substring(line.indexOf('-') + 1));
        }
    }

    /**
     * The form.
     *
     * @param path where it goes
     * @param back the lesson
     * @param rights whether a rights problem is reported
     * @param longest how many characters it may have
     */
    public record View(
            String path, String back, String title, boolean rights, Typed typed, int longest, FieldProblems problems) {}
}
