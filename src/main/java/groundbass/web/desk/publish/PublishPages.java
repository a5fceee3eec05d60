package groundbass.web.desk.publish;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.LessonLook;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import groundbass.release.ReleaseNote;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.desk.calendar.ReleaseCalendar;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.util.List;
import java.util.function.BiFunction;

/** The room in which a lesson goes out: now, or at an hour; in which a promise is taken back; which tells how it stands. */
public final class PublishPages implements PageGroup {
    private static final Outcome<Object> NO_HOUR = Outcome.refused("local", "desk.publish.hour.missing");
    private static final Outcome<Object> NO_ZONE = Outcome.refused("zone", "catalog.problem.missing");
    private static final String PATH = DeskContext.EPISODE;
    private static final String TEMPLATE = "desk/publish";

    private final DeskContext desk;
    private final Rooms rooms;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final Publisher publisher;
    private final PublishingViews publishing;
    private final LessonNews telling;
    private final Clock clock;

    public PublishPages(
            DeskContext desk,
            Rooms rooms,
            Reauthentication reauthentication,
            EpisodeService writing,
            Publisher publisher,
            PublishingViews publishing,
            LessonNews telling,
            Clock clock) {
        this.desk = desk;
        this.rooms = rooms;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.publisher = publisher;
        this.publishing = publishing;
        this.telling = telling;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH + "/publish", Role.EDUCATOR, this::show);
        button(routes, "publish", ctx -> act(ctx, (who, episode) -> publish(ctx, who, episode), "desk.publishing"));
        button(routes, "promise", ctx -> act(ctx, (who, episode) -> promise(ctx, who, episode), "desk.promised"));
        button(routes, "withdraw", ctx -> act(ctx, (who, episode) -> withdraw(ctx, who, episode), "desk.withdrawn"));
        button(routes, "number", ctx -> act(ctx, (who, episode) -> move(ctx, who, episode), "desk.moved"));
        button(routes, "trial", this::tryOut);
        List.of("promise", "withdraw", "number", "trial").forEach(button -> back(routes, button));
        routes.get(PATH + "/calendar", Role.EDUCATOR, this::calendar);
        routes.post(PATH + "/publish/look", Role.EDUCATOR, this::look);
    }

    private static void button(Routes routes, String name, Handler handler) {
        routes.post(PATH + "/" + name, Role.ANYONE, handler);
    }

    /** The address in the browser after a button that found problems: asked for again, it leads to the room. */
    private void back(Routes routes, String button) {
        routes.get(PATH + "/" + button, Role.EDUCATOR, this::lead);
    }

    private void lead(Context ctx) {
        ctx.redirect(DeskContext.path(desk.episode(ctx)) + Room.PUBLISH.way(), HttpStatus.SEE_OTHER);
    }

    private void show(Context ctx) {
        var episode = desk.episode(ctx);
        show(ctx, episode, new Hour("", desk.seriesOf(episode).zone().getId()), FieldProblems.NONE);
    }

    /** The room after something else was asked here that could not be done. */
    void showAgain(Context ctx, Episode episode, FieldProblems problems) {
        ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        show(ctx, episode, new Hour("", desk.seriesOf(episode).zone().getId()), problems);
    }

    private void show(Context ctx, Episode episode, Hour hour, FieldProblems problems) {
        var reader = desk.pages().reader(ctx);
        var series = desk.seriesOf(episode);
        var look = rooms.look(episode);
        var room = rooms.view(ctx, Room.PUBLISH, look).with(problems);
        desk.pages()
                .show(
                        ctx,
                        TEMPLATE,
                        new PublishView(
                                room,
                                episode.state(),
                                FormParameters.text(ctx, "why"),
                                note(ctx),
                                telling.holders(episode),
                                publishing.calendar(look, series, reader, room.differs()),
                                telling.of(series, episode, reader.locale()),
                                belowVideo(look),
                                hour,
                                hour.meaning(reader, clock.instant())));
    }

    private String belowVideo(LessonLook look) {
        var draft = look.draft().orElseThrow(NotFoundResponse::new);
        return telling.belowVideo(look.episode(), draft.document());
    }

    /** The part that changes by itself. */
    private void calendar(Context ctx) {
        var episode = desk.episode(ctx);
        var look = publishing.look().at(desk.educator(ctx), episode);
        var reader = desk.pages().reader(ctx);
        var calendar = publishing.calendar(look, desk.seriesOf(episode), reader, look.differs());
        desk.pages().show(ctx, "desk/calendar", new CalendarView(calendar));
    }

    /** What the hour stands for that is typed at this moment. */
    private void look(Context ctx) {
        desk.episode(ctx);
        var reader = desk.pages().reader(ctx);
        desk.pages().show(ctx, "desk/hour", new HourView(Hour.read(ctx).meaning(reader, clock.instant())));
    }

    /** The button means what the page said when it was pressed, whatever has become of the lesson since. */
    private Outcome<?> publish(Context ctx, EducatorId who, Episode episode) {
        var seen = seen(ctx);
        boolean corrects = seen.equals(Seen.ANYHOW) ? episode.isPublished() : seen.isOut();
        return desk.work(
                who,
                () -> corrects
                        ? publisher.correct(who, episode.id(), note(ctx), seen)
                        : publisher.bringOut(who, episode.id(), seen));
    }

    private static Seen seen(Context ctx) {
        return new Seen(FormParameters.text(ctx, "seen"));
    }

    private static ReleaseNote note(Context ctx) {
        return new ReleaseNote(FormParameters.text(ctx, "note"), FormParameters.ticked(ctx, "byLetter"));
    }

    private Outcome<?> promise(Context ctx, EducatorId who, Episode episode) {
        var hour = Hour.read(ctx);
        if (hour.wall().isEmpty() || hour.place().isEmpty()) {
            return hour.wall().isEmpty() ? NO_HOUR : NO_ZONE;
        }
        return desk.work(
                who,
                () -> publisher.schedule(
                        who, episode.id(), hour.wall().get(), hour.place().get(), seen(ctx)));
    }

    private Outcome<?> withdraw(Context ctx, EducatorId who, Episode episode) {
        return publisher.withdraw(who, episode.id(), seen(ctx));
    }

    private Outcome<?> move(Context ctx, EducatorId who, Episode episode) {
        String number = FormParameters.text(ctx, "number").strip();
        return number.matches("[0-9]{1,6}")
                ? writing.move(who, episode.id(), Integer.parseInt(number))
                : Outcome.refused("number", "catalog.problem.number", number, EpisodeService.HIGHEST_NUMBER);
    }

    /** Builds what students would see of the saved lesson, and leads there. */
    private void tryOut(Context ctx) {
        reauthentication.writer(ctx).ifPresent(who -> rooms.tryOut(ctx, who, desk.episode(ctx, who)));
    }

    /** Does what the button says with the lesson as it is saved. */
    private void act(Context ctx, BiFunction<EducatorId, Episode, Outcome<?>> action, String said) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            publisher.accept(who, episode.id(), PreflightPage.accepted(ctx));
            List<FieldProblem> problems = List.copyOf(action.apply(who, episode).problems());
            if (problems.isEmpty()) {
                Flash.say(ctx, said);
                lead(ctx);
            } else {
                ctx.status(PublishProblems.status(problems));
                show(ctx, desk.episode(ctx, who), Hour.read(ctx), PublishProblems.of(problems));
            }
        });
    }

    /** What the script puts into the page. */
    public record CalendarView(ReleaseCalendar calendar) {}
}
