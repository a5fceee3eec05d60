package groundbass.web.desk.site;

import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.ReleaseRhythm;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
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
    private final Outlooks outlooks;

    public RhythmPages(DeskContext desk, Rhythms rhythms, Outlooks outlooks) {
        this.desk = desk;
        this.rhythms = rhythms;
        this.outlooks = outlooks;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::open);
        routes.post(PATH, Role.EDUCATOR, this::save);
    }

    private void open(Context ctx) {
        var series = desk.series(ctx);
        var form = RhythmForm.of(rhythms.of(series.id()));
        desk.pages().show(ctx, TEMPLATE, view(series, form, outlooks.of(series.id()), FieldProblems.NONE));
    }

    private void save(Context ctx) {
        var series = desk.series(ctx);
        var form = new RhythmForm(
                FormParameters.text(ctx, "first"),
                FormParameters.text(ctx, "time"),
                FormParameters.text(ctx, "weeks"),
                FormParameters.text(ctx, "breaks"));
        var outlook = Outlook.parse(FormParameters.text(ctx, "outlook"));
        var outcome = rhythms.save(desk.educator(ctx), series.id(), form, FormParameters.text(ctx, "base"));
        if (outcome.problems().isEmpty()) {
            outlooks.save(desk.educator(ctx), series.id(), outlook);
            Flash.say(ctx, "desk.saved");
            ctx.redirect("/desk/weeks#series-" + series.id(), HttpStatus.SEE_OTHER);
            return;
        }
        var problems = new FieldProblems(outcome.problems());
        ctx.status(problems.has(Rhythms.MEANWHILE) ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT);
        desk.pages().show(ctx, TEMPLATE, view(series, form, outlook, problems));
    }

    private View view(Series series, RhythmForm form, Outlook outlook, FieldProblems problems) {
        String path = PATH.replace("{id}", series.id().value());
        String base = RhythmForm.of(rhythms.of(series.id())).base();
        return new View(path, series.title(), series.zone().getId(), base, form, outlook, problems);
    }

    /**
     * What the page shows.
     *
     * @param base how the rhythm stands, as the form sends it
     */
    public record View(
            String path,
            String series,
            String zone,
            String base,
            RhythmForm form,
            Outlook outlook,
            FieldProblems problems) {
        /** What students can be shown of the coming lessons. */
        public List<Outlook> outlooks() {
            return List.of(Outlook.values());
        }

        /** How many weeks can lie from one lesson to the next. */
        public List<String> choices() {
            return IntStream.rangeClosed(1, ReleaseRhythm.MOST_WEEKS)
                    .mapToObj(Integer::toString)
                    .toList();
        }
    }
}
