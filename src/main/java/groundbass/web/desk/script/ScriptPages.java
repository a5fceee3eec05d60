package groundbass.web.desk.script;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.script.Chapter;
import groundbass.script.Chapters;
import groundbass.script.captions.Cue;
import groundbass.script.captions.Script;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.Kept;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The room of what is said in a lesson, proofread against its line, and of the chapters of its video. */
public final class ScriptPages implements PageGroup, RoomPage {
    private static final String PATH = DeskContext.EPISODE + Room.SCRIPT.way();
    private static final String TEMPLATE = "desk/script";

    private final DeskContext desk;
    private final Rooms rooms;
    private final EpisodeService writing;

    public ScriptPages(DeskContext desk, Rooms rooms, EpisodeService writing) {
        this.desk = desk;
        this.rooms = rooms;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> rooms.show(ctx, this));
        routes.postFiles(PATH, Role.ANYONE, this::save);
        routes.post(PATH + "/draft", Role.EDUCATOR, this::keep);
        routes.get(PATH + "/signs", Role.EDUCATOR, ctx -> rooms.signs(ctx, this));
        routes.get(PATH + "/chapters.vtt", Role.EDUCATOR, ctx -> download(ctx, "text/vtt", this::webVtt));
        routes.get(
                PATH + "/chapters.txt",
                Role.EDUCATOR,
                ctx -> download(ctx, "text/plain", document -> Chapters.list(chapters(document))));
    }

    @Override
    public Room room() {
        return Room.SCRIPT;
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        return List.of(
                RoomField.of("script", "desk.script.field", document.script()),
                RoomField.of(
                        "chapters", "desk.script.chapters", document.facts().chapters()));
    }

    @Override
    public RoomForm read(Context ctx) {
        return ScriptForm.read(ctx);
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        show(ctx, episode, room, document, ScriptForm.of(document));
    }

    private void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document, ScriptForm form) {
        var messages = Messages.of(desk.pages().reader(ctx).locale());
        var view = desk.work(ctx, episode, () -> ScriptView.of(room, episode, document, form, messages));
        desk.pages().show(ctx, TEMPLATE, view);
    }

    /** What is too long for a script is refused with all that was typed, and not stored in part. */
    private void save(Context ctx) {
        var form = ScriptForm.read(ctx);
        if (form.isKept()) {
            rooms.save(ctx, this, kept -> goOn(ctx, kept));
        } else {
            rooms.refuse(ctx, this, (episode, room, document) -> show(ctx, episode, room, document, form));
        }
    }

    private void keep(Context ctx) {
        if (!ScriptForm.read(ctx).isKept()) {
            throw new BadRequestResponse();
        }
        rooms.keep(ctx, this);
    }

    private void goOn(Context ctx, Kept kept) {
        switch (FormParameters.text(ctx, "then")) {
            case "check" -> rooms.back(ctx, this, "desk.script.checked");
            case "take" -> take(ctx, kept);
            default -> rooms.goOn(ctx, this, kept);
        }
    }

    /** Puts the chapters that the captions suggest in place of those typed. */
    private void take(Context ctx, Kept kept) {
        String proposed = desk.work(kept.who(), () -> proposed(kept.draft().document()));
        writing.saveDraft(kept.who(), kept.episode().id(), (stored, changed) -> true, before -> before.edit()
                .facts(before.facts().withChapters(proposed))
                .done());
        rooms.back(ctx, this, "desk.script.taken");
    }

    private static String proposed(EpisodeDocument document) {
        return Chapters.list(ScriptView.proposed(Script.read(document.script()), document));
    }

    private void download(Context ctx, String type, Function<EpisodeDocument, String> content) {
        var document = writing.draft(desk.educator(ctx), desk.episode(ctx).id())
                .orElseThrow(NotFoundResponse::new)
                .document();
        ctx.header("Cache-Control", "no-store");
        String name = ctx.path().substring(ctx.path().lastIndexOf('/') + 1);
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        ctx.contentType(type + "; charset=utf-8").result(content.apply(document));
    }

    private static List<Chapter> chapters(EpisodeDocument document) {
        return Chapters.read(document.facts().chapters()).chapters();
    }

    /** The last chapter ends with the last caption. */
    private String webVtt(EpisodeDocument document) {
        long end = Optional.of(Script.read(document.script()).cues())
                .filter(cues -> !cues.isEmpty())
                .map(cues -> cues.get(cues.size() - 1))
                .map(Cue::to)
                .orElse(0L);
        return Chapters.webVtt(chapters(document), end);
    }
}
