package groundbass.web.desk.publish;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.form.Outcome;
import groundbass.publishing.Bin;
import groundbass.publishing.TakingBack;
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
import io.javalin.http.Handler;
import io.javalin.http.HttpStatus;
import java.util.function.BiFunction;

/** Takes a lesson back from students, puts it back, throws a draft away. */
public final class TakingBackPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE;

    private final Reauthentication reauthentication;
    private final DeskContext desk;
    private final PublishPages room;
    private final TakingBack takingBack;
    private final Bin bin;

    /** @param room what is shown again where something is wrong */
    public TakingBackPages(
            DeskContext desk, Reauthentication reauthentication, PublishPages room, TakingBack takingBack, Bin bin) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.room = room;
        this.takingBack = takingBack;
        this.bin = bin;
    }

    @Override
    public void addTo(Routes routes) {
        String published = Room.PUBLISH.way();
        button(
                routes,
                "take-back",
                ctx -> act(ctx, (who, lesson) -> takeBack(ctx, who, lesson), "desk.taken-back", published));
        button(routes, "put-back", ctx -> act(ctx, takingBack::putBack, "desk.put-back", published));
        button(routes, "throw-away", this::throwAway);
    }

    private void button(Routes routes, String name, Handler handler) {
        routes.post(PATH + "/" + name, Role.ANYONE, handler);
        routes.get(PATH + "/" + name, Role.EDUCATOR, this::lead);
    }

    private void lead(Context ctx) {
        ctx.redirect(DeskContext.path(desk.episode(ctx)) + Room.PUBLISH.way(), HttpStatus.SEE_OTHER);
    }

    private Outcome<?> takeBack(Context ctx, EducatorId who, Episode lesson) {
        return takingBack.takeBack(who, lesson, FormParameters.text(ctx, "why"));
    }

    private void throwAway(Context ctx) {
        act(ctx, bin::throwAway, "desk.thrown-away", "");
    }

    private void act(Context ctx, BiFunction<EducatorId, Episode, Outcome<?>> action, String said, String way) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var problems = action.apply(who, episode).problems();
            if (problems.isEmpty()) {
                Flash.say(ctx, said);
                ctx.redirect(way.isEmpty() ? "/desk" : DeskContext.path(ctx) + way, HttpStatus.SEE_OTHER);
            } else {
                room.showAgain(ctx, episode, new FieldProblems(problems));
            }
        });
    }
}
