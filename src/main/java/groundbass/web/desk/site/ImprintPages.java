package groundbass.web.desk.site;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.Room;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** What the site says about who teaches here. */
public final class ImprintPages implements PageGroup {
    private static final String PATH = "/desk/who-teaches";
    private static final String TEMPLATE = "desk/who-teaches";

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
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.EDUCATOR, this::save);
    }

    private void show(Context ctx) {
        var now = settings.current().imprint();
        desk.pages()
                .show(
                        ctx,
                        TEMPLATE,
                        new View(
                                now.isComplete() ? now : begun(ctx, now),
                                lesson(ctx.queryParam("lesson")),
                                FieldProblems.NONE));
    }

    /** The lesson that this was asked for, on its way out. */
    private static Optional<EpisodeId> lesson(String named) {
        return Optional.ofNullable(named).flatMap(EpisodeId::parse);
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
        var lesson = lesson(ctx.formParam("lesson"));
        var outcome = settings.saveImprint(desk.educator(ctx), typed);
        if (outcome.result().isEmpty()) {
            desk.pages().showAgain(ctx, TEMPLATE, new View(typed, lesson, new FieldProblems(outcome.problems())));
            return;
        }
        chosen.forget();
        Flash.say(ctx, "desk.saved");
        ctx.redirect(lesson.map(ImprintPages::publishing).orElse(PATH), HttpStatus.SEE_OTHER);
    }

    private static String publishing(EpisodeId lesson) {
        return DeskContext.EPISODE.replace("{id}", lesson.value()) + Room.PUBLISH.way();
    }

    /**
     * What the page shows.
     *
     * @param lesson where its button leads back to; empty where nobody came from one
     */
    public record View(Imprint form, Optional<EpisodeId> lesson, FieldProblems problems) {}
}
