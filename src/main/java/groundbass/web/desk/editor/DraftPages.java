package groundbass.web.desk.editor;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.form.FieldProblem;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.DeskJson;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.editor.EditorView.Difference;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Locale;

/** Saving as one types, and the revisions that an educator keeps. */
public final class DraftPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE;

    private final DeskContext desk;
    private final Editor editor;
    private final Saving saving;
    private final EpisodeService writing;

    public DraftPages(DeskContext desk, Editor editor, Saving saving, EpisodeService writing) {
        this.desk = desk;
        this.editor = editor;
        this.saving = saving;
        this.writing = writing;
    }

    /**
     * What became of saving a draft.
     *
     * @param saved whether what was sent is what is stored now
     * @param version of what is stored
     * @param at when that was stored, as ISO 8601 has it
     * @param others what another window stored, where that is not what was sent
     */
    record DraftAnswer(boolean saved, int version, String at, List<DifferenceView> others) {}

    /** @param field the id of the field; empty where the page has to be opened anew to see it */
    record DifferenceView(String field, String label, String stored) {}

    @Override
    public void addTo(Routes routes) {
        routes.post(PATH + "/draft", Role.EDUCATOR, this::draft);
        routes.post(PATH + "/revisions", Role.ANYONE, this::keep);
        routes.get(PATH + "/revisions", Role.EDUCATOR, DraftPages::back);
    }

    private static void back(Context ctx) {
        ctx.redirect(DeskContext.path(ctx), HttpStatus.SEE_OTHER);
    }

    private void draft(Context ctx) {
        var locale = desk.pages().reader(ctx).locale();
        var result = saving.quietly(ctx, desk.educator(ctx));
        var others = result.others().stream().map(other -> view(other, locale)).toList();
        ctx.status(others.isEmpty() ? HttpStatus.OK : HttpStatus.CONFLICT);
        String at = result.draft().savedAt().map(Object::toString).orElse("");
        DeskJson.send(ctx, new DraftAnswer(others.isEmpty(), result.draft().version(), at, others));
    }

    private static DifferenceView view(Difference other, Locale locale) {
        String label = Messages.of(locale).say(other.label());
        return new DifferenceView(other.field(), label, other.stored());
    }

    private void keep(Context ctx) {
        saving.save(ctx).ifPresent(saved -> {
            var problems = saved.problems().isEmpty()
                    ? revision(saved.who(), saved, FormParameters.text(ctx, "revisionNote"))
                    : saved.problems();
            if (problems.isEmpty()) {
                Flash.say(ctx, "desk.revision");
                back(ctx);
            } else {
                editor.showAgain(ctx, saved.episode(), saved.form(), saved.at(), problems);
            }
        });
    }

    private List<FieldProblem> revision(EducatorId who, Saved saved, String note) {
        return writing.makeRevision(who, saved.episode().id(), note).problems();
    }
}
