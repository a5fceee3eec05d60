package groundbass.web.desk.facts;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;

/** What a lesson says beside its line, in one place: level, gear, video, courses, whose music it is. */
public final class FactsPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/facts";
    private static final String TEMPLATE = "desk/facts";

    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;

    public FactsPages(DeskContext desk, Reauthentication reauthentication, EpisodeService writing) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.ANYONE, ctx -> reauthentication.writer(ctx).ifPresent(who -> save(ctx, who)));
    }

    private void show(Context ctx) {
        var episode = desk.episode(ctx);
        var draft = draft(ctx, desk.educator(ctx));
        var form = FactsForm.of(draft.version(), draft.document());
        var view = FactsView.of(episode, draft.document(), form, false, problems(draft.document()));
        desk.pages().show(ctx, TEMPLATE, view);
    }

    private void save(Context ctx, EducatorId who) {
        var episode = desk.episode(ctx, who);
        var form = FactsForm.read(ctx);
        var document = form.in(draft(ctx, who).document());
        var outcome = writing.saveDraft(who, episode.id(), form.base(), document);
        var saved = outcome.result().orElseThrow(NotFoundResponse::new);
        if (saved instanceof DraftSave.Conflict conflict) {
            int version = conflict.stored().version();
            var again = new FactsForm(version, form.level(), form.facts(), form.rights());
            ctx.status(HttpStatus.CONFLICT);
            desk.pages().show(ctx, TEMPLATE, FactsView.of(episode, document, again, true, problems(document)));
            return;
        }
        if (!problems(document).isEmpty()) {
            int version = ((DraftSave.Saved) saved).draft().version();
            var again = new FactsForm(version, form.level(), form.facts(), form.rights());
            desk.pages().showAgain(ctx, TEMPLATE, FactsView.of(episode, document, again, false, problems(document)));
            return;
        }
        Flash.say(ctx, "desk.saved");
        ctx.redirect(DeskContext.path(ctx) + "/facts", HttpStatus.SEE_OTHER);
    }

    private Draft draft(Context ctx, EducatorId who) {
        return writing.draft(who, desk.episode(ctx, who).id()).orElseThrow(NotFoundResponse::new);
    }

    /** Of all that keeps a document from being fixed, what belongs to this page. */
    private static FieldProblems problems(EpisodeDocument document) {
        return new FieldProblems(DocumentCheck.problems(document).stream()
                .filter(problem ->
                        problem.field().startsWith("facts.") || problem.field().startsWith("rights."))
                .toList());
    }
}
