package groundbass.web.desk.site;

import groundbass.catalog.series.Rhythm;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Rhythms;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.stream.IntStream;

/** When lessons of a series go out. */
public final class RhythmPages implements PageGroup {
    private static final String PATH = "/desk/series/{id}/rhythm";
    private static final String TEMPLATE = "desk/rhythm";

    private final DeskContext desk;
    private final Rhythms rhythms;

    public RhythmPages(DeskContext desk, Rhythms rhythms) {
        this.desk = desk;
        this.rhythms = rhythms;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::open);
        routes.post(PATH, Role.EDUCATOR, this::save);
    }

    private void open(Context ctx) {
        var series = desk.series(ctx);
        var form = RhythmForm.of(rhythms.of(series.id()));
        var view = new View(ctx.path(), series.title(), series.zone().getId(), form, FieldProblems.NONE);
        desk.pages().show(ctx, TEMPLATE, view);
    }

    private void save(Context ctx) {
        var series = desk.series(ctx);
        var form = new RhythmForm(
                FormParameters.text(ctx, "first"),
                FormParameters.text(ctx, "time"),
                FormParameters.text(ctx, "weeks"),
                FormParameters.text(ctx, "breaks"));
        var outcome = rhythms.save(desk.educator(ctx), series.id(), form);
        if (outcome.problems().isEmpty()) {
            Flash.say(ctx, "desk.saved");
            ctx.redirect("/desk/weeks#series-" + series.id(), HttpStatus.SEE_OTHER);
            return;
        }
        var problems = new FieldProblems(outcome.problems());
        desk.pages()
                .showAgain(
                        ctx,
                        TEMPLATE,
                        new View(ctx.path(), series.title(), series.zone().getId(), form, problems));
    }

    /** What the page shows. */
    public record View(String path, String series, String zone, RhythmForm form, FieldProblems problems) {
        /** How many weeks can lie from one lesson to the next. */
        public List<String> choices() {
            return IntStream.rangeClosed(1, Rhythm.MOST_WEEKS)
                    .mapToObj(Integer::toString)
                    .toList();
        }
    }
}
