package groundbass.web.desk.walkthrough;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;

/** The walkthrough on the desk: reworded step by step, and as a prompter for filming. */
public final class WalkthroughPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/walkthrough";
    private static final String PROMPTER = DeskContext.EPISODE + "/prompter";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;

    public WalkthroughPages(DeskContext desk, Reauthentication reauthentication, EpisodeService writing) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, "desk/walkthrough"));
        routes.post(PATH, Role.ANYONE, ctx -> reauthentication.writer(ctx).ifPresent(who -> save(ctx, who)));
        routes.get(PROMPTER, Role.EDUCATOR, ctx -> show(ctx, "desk/prompter"));
    }

    private void show(Context ctx, String template) {
        var episode = desk.episode(ctx);
        var draft = writing.draft(desk.educator(ctx), episode.id()).orElseThrow(NotFoundResponse::new);
        desk.pages().show(ctx, template, view(desk.educator(ctx), episode, draft, draft.document(), false));
    }

    private WalkthroughView view(
            EducatorId who, Episode episode, Draft stored, EpisodeDocument document, boolean conflict) {
        return desk.work(who, () -> WalkthroughView.of(episode, stored.version(), document, conflict));
    }

    private void save(Context ctx, EducatorId who) {
        var episode = desk.episode(ctx, who);
        var draft = writing.draft(who, episode.id()).orElseThrow(NotFoundResponse::new);
        var form = WalkthroughForm.read(ctx);
        var outcome = writing.saveDraft(who, episode.id(), form.base(), form.in(draft.document()));
        var saved = outcome.result().orElseThrow(NotFoundResponse::new);
        if (saved instanceof DraftSave.Conflict conflict) {
            var stored = conflict.stored();
            var view = view(who, episode, stored, form.in(stored.document()), true);
            ctx.status(HttpStatus.CONFLICT);
            desk.pages().show(ctx, "desk/walkthrough", view);
            return;
        }
        Flash.say(ctx, "desk.saved");
        ctx.redirect(DeskContext.path(ctx) + "/walkthrough", HttpStatus.SEE_OTHER);
    }
}
