package groundbass.web.desk.editor;

import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.function.Function;

/**
 * Writing an episode. Routes that save let anyone through, because a form whose sign-in has run out must come back with
 * all that was typed; {@link Saving} asks who it is.
 */
public final class EditorPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE;

    private final DeskContext desk;
    private final Editor editor;
    private final Saving saving;

    public EditorPages(DeskContext desk, Editor editor, Saving saving) {
        this.desk = desk;
        this.editor = editor;
        this.saving = saving;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> editor.show(ctx, desk.episode(ctx)));
        routes.post(PATH, Role.ANYONE, ctx -> change(ctx, form -> form, ""));
        routes.post(PATH + "/exercises", Role.ANYONE, ctx -> change(ctx, EpisodeForm::withOneMoreExercise, "#more"));
        routes.post(PATH + "/exercises/{place}/remove", Role.ANYONE, this::removeExercise);
        routes.post(PATH + "/preview", Role.EDUCATOR, this::preview);
        List.of("/exercises", "/exercises/{place}/remove", "/publish", "/promise", "/withdraw", "/trial")
                .forEach(button -> back(routes, button));
    }

    /** The address in the browser after a button that found problems: asked for again, it leads to the episode. */
    private static void back(Routes routes, String button) {
        routes.get(PATH + button, Role.EDUCATOR, ctx -> ctx.redirect(DeskContext.path(ctx), HttpStatus.SEE_OTHER));
    }

    private void removeExercise(Context ctx) {
        String place = ctx.pathParam("place");
        int number = place.matches("[0-9]{1,3}") ? Integer.parseInt(place) : -1;
        change(ctx, form -> form.withoutExercise(number), "#exercises");
    }

    private void change(Context ctx, Function<EpisodeForm, EpisodeForm> change, String spot) {
        saving.save(ctx, change).ifPresent(saved -> {
            if (saved.problems().isEmpty()) {
                Flash.say(ctx, "desk.saved");
                ctx.redirect(DeskContext.path(ctx) + spot, HttpStatus.SEE_OTHER);
            } else {
                editor.showAgain(ctx, saved.episode(), saved.form(), saved.at(), saved.problems());
            }
        });
    }

    private void preview(Context ctx) {
        var episode = desk.episode(ctx);
        var form = EpisodeForm.read(ctx);
        editor.preview(ctx, episode, form, FormParameters.ticked(ctx, "beside"), FormParameters.ticked(ctx, "narrow"));
    }
}
