package groundbass.web.desk.room;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.publishing.LessonLook;
import groundbass.publishing.Publisher;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.DeskJson;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.shell.Flash;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Opens the rooms of lessons and saves what is typed in them. A room saves what it says and no more, so that two rooms in
 * two windows do not meet; where two windows have the same room, neither overwrites the other unseen. Nothing typed is
 * lost: whose sign-in has run out gets it back with the question who they are.
 */
public final class Rooms {
    private static final String TRIAL = "trial";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final PublishingViews publishing;
    private final Publisher publisher;

    public Rooms(
            DeskContext desk,
            Reauthentication reauthentication,
            EpisodeService writing,
            PublishingViews publishing,
            Publisher publisher) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.publishing = publishing;
        this.publisher = publisher;
    }

    /**
     * The routes that each room has: to see it, to save it, to save it as one types, and how all rooms stand after that.
     * Saving lets anyone through, since a form whose sign-in has run out must come back with all that was typed.
     */
    public void open(Routes routes, RoomPage page) {
        String path = DeskContext.EPISODE + page.way();
        routes.get(path, Role.EDUCATOR, ctx -> show(ctx, page));
        routes.post(path, Role.ANYONE, ctx -> save(ctx, page));
        routes.post(path + "/draft", Role.EDUCATOR, ctx -> keep(ctx, page));
        routes.get(path + "/signs", Role.EDUCATOR, ctx -> signs(ctx, page));
    }

    /** What is to be done in each room and in this one, as parts of its page. */
    public void signs(Context ctx, RoomPage page) {
        var episode = desk.episode(ctx);
        var draft = draft(desk.educator(ctx), episode);
        desk.pages().show(ctx, "desk/signs", new SignsView(view(ctx, page, episode, draft)));
    }

    /** What the script puts into the page. */
    public record SignsView(RoomView room) {}

    /** The room as it is saved. */
    public void show(Context ctx, RoomPage page) {
        var episode = desk.episode(ctx);
        var draft = draft(desk.educator(ctx), episode);
        page.show(ctx, episode, view(ctx, page, episode, draft), draft.document());
    }

    /** The room as it is saved, with what went wrong beside it. */
    public void showAgain(Context ctx, RoomPage page, FieldProblems problems) {
        showAgain(ctx, page, problems, (episode, room, stored) -> page.show(ctx, episode, room, stored));
    }

    /** The same for a room that has more to show than what is saved. */
    public void showAgain(Context ctx, RoomPage page, FieldProblems problems, Refusal refusal) {
        var episode = desk.episode(ctx);
        var draft = draft(desk.educator(ctx), episode);
        ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        refusal.show(episode, view(ctx, page, episode, draft).with(problems), draft.document());
    }

    /** Saves what was sent and answers with the room, or with what its button asks for. */
    public void save(Context ctx, RoomPage page) {
        save(ctx, page, kept -> goOn(ctx, page, kept));
    }

    /** Saves what was sent; {@code then} answers, unless two windows met or nobody is signed in. */
    public void save(Context ctx, RoomPage page, Consumer<Kept> then) {
        var form = page.read(ctx);
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var saved = store(ctx, who, episode, page, form);
            if (saved instanceof DraftSave.Conflict conflict) {
                meet(ctx, page, episode, conflict);
            } else {
                then.accept(new Kept(who, episode, ((DraftSave.Saved) saved).draft()));
            }
        });
    }

    /** Answers with the room, or with what its button asks for. */
    public void goOn(Context ctx, RoomPage page, Kept kept) {
        if (FormParameters.text(ctx, "then").equals(TRIAL)) {
            tryOut(ctx, kept.who(), kept.episode());
        } else {
            back(ctx, page, "desk.room." + page.room().word());
        }
    }

    /** Shows a room whose form may not be stored, on top of what is stored. */
    public interface Refusal {
        void show(Episode episode, RoomView room, EpisodeDocument stored);
    }

    /** Answers a form that may not be stored, once it is known who sent it. */
    public void refuse(Context ctx, RoomPage page, Refusal refusal) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var stored = draft(who, episode);
            var view = view(ctx, page, episode, stored).withBase(FormParameters.text(ctx, "base"));
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            refusal.show(episode, view, stored.document());
        });
    }

    /** Leads to the room, which then says {@code flash.NAME}. */
    public void back(Context ctx, RoomPage page, String name) {
        Flash.say(ctx, name);
        ctx.redirect(DeskContext.path(ctx) + page.way(), HttpStatus.SEE_OTHER);
    }

    /** Builds what students would see of the saved lesson and leads there, or to where it is told what is in the way. */
    public void tryOut(Context ctx, EducatorId who, Episode episode) {
        var built = publisher.trials().build(who, episode.id());
        if (built.result().isPresent()) {
            ctx.redirect("/preview/" + built.result().get(), HttpStatus.SEE_OTHER);
        } else {
            Flash.say(ctx, "desk.held");
            ctx.redirect(DeskContext.path(ctx) + Room.PUBLISH.way(), HttpStatus.SEE_OTHER);
        }
    }

    /** Both texts: the one typed here, and what another window saved. Saving again takes the one typed here. */
    private void meet(Context ctx, RoomPage page, Episode episode, DraftSave.Conflict conflict) {
        var view = view(ctx, page, episode, conflict.stored())
                .with(others(page, conflict.stored().document(), conflict.yours()));
        ctx.status(HttpStatus.CONFLICT);
        page.show(ctx, episode, view, conflict.yours());
    }

    /** Saves what was sent and tells the page's script what became of it. */
    public void keep(Context ctx, RoomPage page) {
        var saved = store(ctx, desk.educator(ctx), desk.episode(ctx), page, page.read(ctx));
        if (saved instanceof DraftSave.Conflict conflict) {
            var others = others(page, conflict.stored().document(), conflict.yours());
            ctx.status(HttpStatus.CONFLICT);
            answer(ctx, page, conflict.stored(), others);
        } else {
            answer(ctx, page, ((DraftSave.Saved) saved).draft(), List.of());
        }
    }

    private void answer(Context ctx, RoomPage page, Draft stored, List<RoomField> others) {
        var words = Messages.of(desk.pages().reader(ctx).locale());
        DeskJson.send(
                ctx,
                new KeptAnswer(
                        others.isEmpty(),
                        page.base(stored.document()),
                        stored.savedAt().map(Object::toString).orElse(""),
                        desk.nameOfOther(ctx, stored.educator())
                                .map(name -> words.say("desk.editor.saved.by", name))
                                .orElse(""),
                        others.stream()
                                .map(field -> KeptAnswer.Other.of(field, words))
                                .toList()));
    }

    private DraftSave store(Context ctx, EducatorId who, Episode episode, RoomPage page, RoomForm form) {
        String base = FormParameters.text(ctx, "base");
        return writing.saveDraft(
                        who,
                        episode.id(),
                        (stored, yours) -> page.base(stored).equals(base)
                                || others(page, stored, yours).isEmpty(),
                        form.change(episode))
                .result()
                .orElseThrow(NotFoundResponse::new);
    }

    private static List<RoomField> others(RoomPage page, EpisodeDocument stored, EpisodeDocument yours) {
        return RoomField.others(page.fields(stored), page.fields(yours));
    }

    private Draft draft(EducatorId who, Episode episode) {
        return writing.draft(who, episode.id()).orElseThrow(NotFoundResponse::new);
    }

    private static Draft draft(LessonLook look) {
        return look.draft().orElseThrow(NotFoundResponse::new);
    }

    private RoomView view(Context ctx, RoomPage page, Episode episode, Draft draft) {
        return view(ctx, page, publishing.look().at(episode, draft));
    }

    private RoomView view(Context ctx, RoomPage page, LessonLook look) {
        return view(ctx, page.room(), page.way(), page.base(draft(look).document()), look);
    }

    /** A look at a lesson of theirs, for a page that says more of it than its room does. */
    public LessonLook look(Episode episode) {
        var owner = desk.seriesOf(episode).owner();
        return publishing.look().at(episode, draft(owner, episode));
    }

    /** What a room shows that saves nothing by itself. */
    public RoomView view(Context ctx, Room room, Episode episode) {
        return view(ctx, room, look(episode));
    }

    /** The same for a lesson that is looked at already. */
    public RoomView view(Context ctx, Room room, LessonLook look) {
        return view(ctx, room, room.way(), "", look);
    }

    /** What a page shows that goes on from what a room says. */
    public RoomView view(Context ctx, RoomPage page, Episode episode) {
        return view(ctx, page, look(episode));
    }

    private RoomView view(Context ctx, Room room, String way, String base, LessonLook look) {
        var episode = look.episode();
        var series = desk.seriesOf(episode);
        String path = DeskContext.path(episode);
        var draft = draft(look);
        var document = draft.document();
        var checked = look.checked();
        var preflight = PreflightView.of(path, checked);
        var differs = checked.differs();
        var states = new RoomStates(document, preflight, episode.isPublished(), differs.isPresent());
        var rows = Stream.of(Room.values())
                .map(one -> new RoomRow(one, path + one.way(), states.of(one), one == room))
                .toList();
        return new RoomView(
                room,
                path,
                path + way,
                document.title(),
                series.title(),
                episode.number(),
                document.settings().language(),
                publishing.standing(look, desk.pages().reader(ctx)),
                draft.savedAt(),
                draft.savedAt().flatMap(at -> desk.nameOfOther(ctx, draft.educator())),
                base,
                differs,
                rows,
                preflight,
                FieldProblems.NONE,
                List.of());
    }
}
