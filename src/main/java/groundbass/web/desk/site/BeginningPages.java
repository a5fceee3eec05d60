package groundbass.web.desk.site;

import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.series.Series;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.LanguageRow;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/** What new lessons of a series begin with. */
public final class BeginningPages implements PageGroup {
    private static final String PATH = "/desk/series/{id}/beginning";
    private static final String TEMPLATE = "desk/beginning";

    private final DeskContext desk;
    private final Beginnings beginnings;

    public BeginningPages(DeskContext desk, Beginnings beginnings) {
        this.desk = desk;
        this.beginnings = beginnings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.EDUCATOR, this::save);
    }

    private void show(Context ctx) {
        var series = desk.series(ctx);
        desk.pages().show(ctx, TEMPLATE, view(ctx, series, kept(series), FieldProblems.NONE));
    }

    private EpisodeDocument kept(Series series) {
        return beginnings.of(series.id()).orElseGet(() -> EpisodeDocument.titled("", Level.BEGINNER));
    }

    private void save(Context ctx) {
        var series = desk.series(ctx);
        var typed = read(ctx, kept(series));
        var saved = beginnings.save(desk.educator(ctx), series.id(), typed);
        if (saved.problems().isEmpty()) {
            Flash.say(ctx, "desk.saved");
            ctx.redirect(ctx.path(), HttpStatus.SEE_OTHER);
        } else {
            desk.pages().showAgain(ctx, TEMPLATE, view(ctx, series, typed, new FieldProblems(saved.problems())));
        }
    }

    private static EpisodeDocument read(Context ctx, EpisodeDocument before) {
        return before.edit()
                .level(Level.parse(FormParameters.text(ctx, "level")).orElse(before.level()))
                .notes(FormParameters.text(ctx, "notes"))
                .groove(new GrooveSource(FormParameters.text(ctx, "grooveName"), ""))
                .rights(new Rights(
                        FormParameters.text(ctx, "rights.composer").strip(),
                        FormParameters.text(ctx, "rights.credit").strip(),
                        FormParameters.text(ctx, "rights.statement").strip(),
                        Clearance.parse(FormParameters.text(ctx, "rights.clearance"))
                                .orElse(before.rights().clearance()),
                        new Licence(
                                FormParameters.text(ctx, "rights.licence.reference")
                                        .strip(),
                                FormParameters.text(ctx, "rights.licence.from").strip(),
                                FormParameters.text(ctx, "rights.licence.until").strip())))
                .facts(new LessonFacts(
                        "", FormParameters.text(ctx, "facts.gear").strip(), List.of(), ""))
                .settings(new DocumentSettings(
                        FormParameters.text(ctx, "settings.language"),
                        FormParameters.text(ctx, "settings.tempos"),
                        FormParameters.text(ctx, "settings.rounds"),
                        before.settings().naming()))
                .done();
    }

    private static View view(Context ctx, Series series, EpisodeDocument document, FieldProblems problems) {
        return new View(ctx.path(), series.title(), document, problems);
    }

    /** What the page shows. */
    public record View(String path, String series, EpisodeDocument document, FieldProblems problems) {
        public List<Level> levels() {
            return List.of(Level.values());
        }

        public List<Clearance> clearances() {
            return List.of(Clearance.values());
        }

        /** Templates would take the settings of a document for a setter. */
        public DocumentSettings settings() {
            return document.settings();
        }

        public List<LanguageRow> languages() {
            return LanguageRow.with(settings().language());
        }

        public List<String> grooves() {
            return GrooveLibrary.all().stream().map(Groove::name).toList();
        }
    }
}
