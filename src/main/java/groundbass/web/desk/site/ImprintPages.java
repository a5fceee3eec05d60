package groundbass.web.desk.site;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** What the site says about who teaches here. */
public final class ImprintPages implements PageGroup {
    private static final String PATH = "/desk/who-teaches";

    private final DeskContext desk;
    private final Educators educators;
    private final Settings settings;
    private final CachedSettings chosen;

    public ImprintPages(DeskContext desk, Educators educators, Settings settings, CachedSettings chosen) {
        this.desk = desk;
        this.educators = educators;
        this.settings = settings;
        this.chosen = chosen;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.OWNER, this::show);
        routes.post(PATH, Role.OWNER, this::save);
    }

    private void show(Context ctx) {
        var now = settings.current().imprint();
        desk.pages()
                .show(ctx, "desk/who-teaches", new View(now.isComplete() ? now : begun(ctx, now), FieldProblems.NONE));
    }

    /** With what is known already, so that it has only to be agreed to. */
    private Imprint begun(Context ctx, Imprint now) {
        Educator me = educators.find(desk.educator(ctx)).orElseThrow();
        return new Imprint(
                now.name().isEmpty() ? me.name() : now.name(),
                now.email().isEmpty() ? me.email() : now.email(),
                now.words(),
                now.legal(),
                now.guardians());
    }

    private void save(Context ctx) {
        var typed = new Imprint(
                FormParameters.text(ctx, "name"),
                FormParameters.text(ctx, "email"),
                FormParameters.text(ctx, "words"),
                FormParameters.text(ctx, "legal"),
                FormParameters.text(ctx, "guardians"));
        var outcome = settings.saveImprint(desk.educator(ctx), typed);
        if (outcome.result().isEmpty()) {
            desk.pages().showAgain(ctx, "desk/who-teaches", new View(typed, new FieldProblems(outcome.problems())));
            return;
        }
        chosen.forget();
        Flash.say(ctx, "desk.saved");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    /** What the page shows. */
    public record View(Imprint form, FieldProblems problems) {}
}
