package groundbass.web.desk.editor;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.function.UnaryOperator;

/** The rooms in which lines are written. A lesson opens in the room of its line. */
public final class EditorPages implements PageGroup {
    private static final String EXERCISES = DeskContext.EPISODE + Room.EXERCISES.way();
    private static final String ONE = EXERCISES + "/{place}";

    private final DeskContext desk;
    private final Rooms rooms;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final LinePreviews previews;
    private final RateLimits limits;

    public EditorPages(
            DeskContext desk,
            Rooms rooms,
            Reauthentication reauthentication,
            EpisodeService writing,
            RateLimits limits) {
        this.desk = desk;
        this.rooms = rooms;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.previews = new LinePreviews(desk);
        this.limits = limits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(DeskContext.EPISODE, Role.EDUCATOR, this::begin);
        var line = new LineRoom(desk, previews);
        rooms.open(routes, line);
        new BringInPages(desk, rooms, line, reauthentication, writing, previews, limits).addTo(routes);
        routes.get(EXERCISES, Role.EDUCATOR, this::exercises);
        routes.post(EXERCISES, Role.ANYONE, ctx -> reauthentication.writer(ctx).ifPresent(who -> add(ctx, who)));
        routes.get(ONE, Role.EDUCATOR, this::exercise);
        routes.post(ONE, Role.ANYONE, this::save);
        routes.post(ONE + "/draft", Role.EDUCATOR, ctx -> rooms.keep(ctx, room(place(ctx))));
        routes.get(ONE + "/signs", Role.EDUCATOR, ctx -> rooms.signs(ctx, room(place(ctx))));
    }

    private void begin(Context ctx) {
        desk.episode(ctx);
        lead(ctx, Room.LINE.way());
    }

    private static void lead(Context ctx, String way) {
        ctx.redirect(DeskContext.path(ctx) + way, HttpStatus.SEE_OTHER);
    }

    private ExerciseRoom room(int place) {
        return new ExerciseRoom(desk, previews, place);
    }

    /** From 0. */
    private static int place(Context ctx) {
        String number = ctx.pathParam("place");
        if (!number.matches("[1-9][0-9]{0,2}")) {
            throw new NotFoundResponse();
        }
        return Integer.parseInt(number) - 1;
    }

    private int count(Context ctx) {
        var who = desk.educator(ctx);
        return writing.draft(who, desk.episode(ctx).id())
                .orElseThrow(NotFoundResponse::new)
                .document()
                .exercises()
                .size();
    }

    /** The first exercise; where there is none, the way to write one. */
    private void exercises(Context ctx) {
        if (count(ctx) > 0) {
            lead(ctx, Room.EXERCISES.way() + "/1");
        } else {
            desk.pages().show(ctx, "desk/exercises", new None(rooms.view(ctx, Room.EXERCISES, desk.episode(ctx))));
        }
    }

    /** The exercise that the address names; the list of them where it was removed. */
    private void exercise(Context ctx) {
        if (place(ctx) < count(ctx)) {
            rooms.show(ctx, room(place(ctx)));
        } else {
            lead(ctx, Room.EXERCISES.way());
        }
    }

    private void save(Context ctx) {
        var page = room(place(ctx));
        rooms.save(ctx, page, kept -> {
            switch (FormParameters.text(ctx, "then")) {
                case "add" -> add(ctx, kept.who());
                case "remove" -> remove(ctx, kept.who(), place(ctx));
                default -> rooms.goOn(ctx, page, kept);
            }
        });
    }

    private void add(Context ctx, EducatorId who) {
        var document = change(ctx, who, ExerciseList::withOneMore);
        Flash.say(ctx, "desk.exercise.added");
        lead(ctx, Room.EXERCISES.way() + "/" + document.exercises().size());
    }

    private void remove(Context ctx, EducatorId who, int place) {
        change(ctx, who, document -> ExerciseList.without(document, place));
        Flash.say(ctx, "desk.exercise.removed");
        lead(ctx, Room.EXERCISES.way());
    }

    private EpisodeDocument change(Context ctx, EducatorId who, UnaryOperator<EpisodeDocument> change) {
        var saved = writing.saveDraft(who, desk.episode(ctx, who).id(), (stored, changed) -> true, change)
                .result()
                .orElseThrow(NotFoundResponse::new);
        return ((DraftSave.Saved) saved).draft().document();
    }

    /** The room of the exercises while there is none. */
    public record None(RoomView room) {}
}
