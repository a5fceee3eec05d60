package groundbass.web.desk.site;

import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.settings.SiteSettings;
import groundbass.document.Level;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.Zones;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.function.Supplier;

/** Makes and changes series, and begins episodes in them. */
public final class SeriesPages implements PageGroup {
    private static final String NEW = "/desk/series/new";

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final EpisodeService episodes;
    private final Supplier<SiteSettings> settings;

    public SeriesPages(
            DeskContext desk, SeriesCatalog catalog, EpisodeService episodes, Supplier<SiteSettings> settings) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.settings = settings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(NEW, Role.EDUCATOR, this::begin);
        routes.post(NEW, Role.EDUCATOR, this::create);
        routes.get("/desk/series/{id}", Role.EDUCATOR, this::open);
        routes.post("/desk/series/{id}", Role.EDUCATOR, this::change);
        routes.post("/desk/series/{id}/episodes", Role.EDUCATOR, this::beginEpisode);
    }

    private void begin(Context ctx) {
        var blank = new SeriesForm("", "", "", Zones.named(settings.get().defaultZone()));
        desk.pages().show(ctx, "desk/series", View.of(NEW, blank, FieldProblems.NONE));
    }

    private void create(Context ctx) {
        var form = read(ctx);
        var outcome = catalog.create(desk.educator(ctx), form);
        answer(ctx, NEW, form, new FieldProblems(outcome.problems()), "desk.series-created");
    }

    private void open(Context ctx) {
        var series = desk.series(ctx);
        desk.pages().show(ctx, "desk/series", View.of(ctx.path(), SeriesForm.of(series), FieldProblems.NONE));
    }

    private void change(Context ctx) {
        var series = desk.series(ctx);
        var form = read(ctx);
        var outcome = catalog.edit(desk.educator(ctx), series.id(), form);
        answer(ctx, ctx.path(), form, new FieldProblems(outcome.problems()), "desk.saved");
    }

    private void answer(Context ctx, String path, SeriesForm form, FieldProblems problems, String said) {
        if (problems.isEmpty()) {
            Flash.say(ctx, said);
            ctx.redirect("/desk", HttpStatus.SEE_OTHER);
        } else {
            desk.pages().showAgain(ctx, "desk/series", View.of(path, form, problems));
        }
    }

    private void beginEpisode(Context ctx) {
        var series = desk.series(ctx);
        String title = FormParameters.text(ctx, "title");
        var level = Level.parse(FormParameters.text(ctx, "level")).orElse(Level.BEGINNER);
        var outcome = episodes.create(desk.educator(ctx), series.id(), title, level);
        if (outcome.result().isPresent()) {
            String bring = FormParameters.text(ctx, "then").equals("bring") ? "/line/bring" : "";
            ctx.redirect("/desk/episodes/" + outcome.result().get().id() + bring, HttpStatus.SEE_OTHER);
            return;
        }
        var problems = new FieldProblems(outcome.problems());
        var view = new Begin(ctx.path(), series.title(), title, level, List.of(Level.values()), problems);
        desk.pages().showAgain(ctx, "desk/new-episode", view);
    }

    private static SeriesForm read(Context ctx) {
        return new SeriesForm(
                FormParameters.text(ctx, "title"),
                FormParameters.text(ctx, "slug"),
                FormParameters.text(ctx, "summary"),
                FormParameters.text(ctx, "zone"));
    }

    /** What the page shows; {@code path} is where the form goes. */
    public record View(String path, boolean fresh, SeriesForm form, List<String> zones, FieldProblems problems) {
        static View of(String path, SeriesForm form, FieldProblems problems) {
            return new View(path, path.equals(NEW), form, Zones.with(form.zone()), problems);
        }
    }

    /** The page of an episode that could not be begun. */
    public record Begin(
            String path, String series, String title, Level level, List<Level> levels, FieldProblems problems) {}
}
