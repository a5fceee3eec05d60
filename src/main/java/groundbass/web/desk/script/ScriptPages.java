package groundbass.web.desk.script;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
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
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What is said in a lesson, proofread against its line, and the chapters of its video. */
public final class ScriptPages implements PageGroup {
    static final String PATH = DeskContext.EPISODE + "/script";
    private static final String TEMPLATE = "desk/script";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;

    public ScriptPages(DeskContext desk, Reauthentication reauthentication, EpisodeService writing) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.postFiles(PATH, Role.ANYONE, this::save);
        routes.get(PATH + "/chapters.vtt", Role.EDUCATOR, ctx -> download(ctx, "text/vtt", this::webVtt));
        routes.get(
                PATH + "/chapters.txt",
                Role.EDUCATOR,
                ctx -> download(ctx, "text/plain", document -> Chapters.list(chapters(document))));
    }

    private void show(Context ctx) {
        var who = desk.educator(ctx);
        var draft = draft(ctx, who);
        var form = ScriptForm.of(draft.version(), draft.document());
        answer(ctx, who, desk.episode(ctx), draft.document(), form, false);
    }

    private void answer(
            Context ctx, EducatorId who, Episode episode, EpisodeDocument document, ScriptForm form, boolean conflict) {
        var messages = Messages.of(desk.pages().reader(ctx).locale());
        var view = desk.work(who, () -> ScriptView.of(episode, document, form, conflict, messages));
        desk.pages().show(ctx, TEMPLATE, view);
    }

    private void save(Context ctx) throws IOException {
        var form = ScriptForm.read(ctx);
        reauthentication.writer(ctx).ifPresent(who -> save(ctx, who, form));
    }

    private void save(Context ctx, EducatorId who, ScriptForm sent) {
        var episode = desk.episode(ctx, who);
        var before = draft(ctx, who).document();
        var form = FormParameters.ticked(ctx, "take")
                ? sent.withChapters(desk.work(who, () -> proposed(ctx, sent, before)))
                : sent;
        if (form.isTooLong() || !form.problem().isEmpty()) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            answer(ctx, who, episode, before, form, false);
            return;
        }
        var outcome = writing.saveDraft(who, episode.id(), form.base(), form.in(before));
        var saved = outcome.result().orElseThrow(NotFoundResponse::new);
        if (saved instanceof DraftSave.Conflict conflict) {
            ctx.status(HttpStatus.CONFLICT);
            var stored = conflict.stored();
            answer(ctx, who, episode, stored.document(), form.withBase(stored.version()), true);
            return;
        }
        Flash.say(ctx, "desk.saved");
        ctx.redirect(PATH.replace("{id}", episode.id().value()) + "#read", HttpStatus.SEE_OTHER);
    }

    private String proposed(Context ctx, ScriptForm form, EpisodeDocument document) {
        var messages = Messages.of(desk.pages().reader(ctx).locale());
        return Chapters.list(ScriptView.proposed(Script.read(form.script()), document, messages));
    }

    private Draft draft(Context ctx, EducatorId who) {
        return writing.draft(who, desk.episode(ctx, who).id()).orElseThrow(NotFoundResponse::new);
    }

    private void download(Context ctx, String type, Function<EpisodeDocument, String> content) {
        var document = draft(ctx, desk.educator(ctx)).document();
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
