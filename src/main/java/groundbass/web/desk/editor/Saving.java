package groundbass.web.desk.editor;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.editor.EditorView.Difference;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Saves what comes with the form of an episode, before whatever its button asks for. Nothing typed is lost: without a
 * sign-in, and where another window saved since, it answers with the text itself and what can be done.
 */
public final class Saving {
    private final DeskContext desk;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final Uploads uploads;
    private final Editor editor;

    public Saving(
            DeskContext desk,
            Reauthentication reauthentication,
            EpisodeService writing,
            Uploads uploads,
            Editor editor) {
        this.desk = desk;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.uploads = uploads;
        this.editor = editor;
    }

    /** Saves the form as typed; empty where the answer is given already. */
    Optional<Saved> save(Context ctx) {
        return save(ctx, form -> form);
    }

    /** Saves the form as {@code change} makes it. */
    Optional<Saved> save(Context ctx, Function<EpisodeForm, EpisodeForm> change) {
        var form = change.apply(EpisodeForm.read(ctx));
        return reauthentication
                .writer(ctx, (email, problems) -> editor.askToSignIn(ctx, form, email, problems))
                .flatMap(who -> save(ctx, who, form));
    }

    private Optional<Saved> save(Context ctx, EducatorId who, EpisodeForm form) {
        var episode = desk.episode(ctx, who);
        var saved = quietly(who, episode, form);
        if (!saved.others().isEmpty()) {
            editor.showConflict(ctx, episode, form, saved.draft(), saved.others());
            return Optional.empty();
        }
        return Optional.of(finish(who, episode, form, saved.draft()));
    }

    /** What is stored now, and where that is not what was sent. */
    record Quiet(Draft draft, List<Difference> others) {}

    /** Saves the form as typed and shows nothing. What was stored already in these very words counts as saved. */
    Quiet quietly(Context ctx, EducatorId who) {
        return quietly(who, desk.episode(ctx, who), EpisodeForm.read(ctx));
    }

    private Quiet quietly(EducatorId who, Episode episode, EpisodeForm form) {
        var saved = store(who, episode, form);
        if (!(saved instanceof DraftSave.Conflict conflict)) {
            return new Quiet(((DraftSave.Saved) saved).draft(), List.of());
        }
        return new Quiet(
                conflict.stored(), Differences.between(conflict.stored().document(), conflict.yours()));
    }

    private DraftSave store(EducatorId who, Episode episode, EpisodeForm form) {
        var before = writing.draft(who, episode.id()).orElseThrow(NotFoundResponse::new);
        var document = form.document(before.document(), id -> upload(id, episode, before.document()));
        var outcome = writing.saveDraft(who, episode.id(), form.base(), document);
        return outcome.result().orElseThrow(NotFoundResponse::new);
    }

    private Saved finish(EducatorId who, Episode episode, EpisodeForm form, Draft draft) {
        var problems = move(who, episode, form.number());
        return new Saved(
                who, episode, form.withBase(draft.version()), draft.savedAt().orElseThrow(), problems);
    }

    private List<FieldProblem> move(EducatorId who, Episode episode, String number) {
        if (number.isBlank() || number.strip().equals(String.valueOf(episode.number()))) {
            return List.of();
        }
        if (!number.strip().matches("[0-9]{1,6}")) {
            return List.of(
                    FieldProblem.of("number", "catalog.problem.number", number.strip(), EpisodeService.HIGHEST_NUMBER));
        }
        return writing.move(who, episode.id(), Integer.parseInt(number.strip())).problems();
    }

    /** A recording that was sent for this episode, or that its document names already. */
    private Optional<Upload> upload(UploadId id, Episode episode, EpisodeDocument before) {
        return uploads.find(id)
                .filter(upload -> upload.episode().equals(episode.id())
                        || before.backingTracks().stream()
                                .map(BackingTrack::upload)
                                .anyMatch(id::equals));
    }
}
