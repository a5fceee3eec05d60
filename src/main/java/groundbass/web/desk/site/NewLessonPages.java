package groundbass.web.desk.site;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Inheritance;
import groundbass.document.Level;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;

/** Begins lessons: with what their series has all lessons begin with, like the last one, or as a duplicate of one. */
public final class NewLessonPages implements PageGroup {
    private static final String LIKE_THE_LAST = "last";

    private final DeskContext desk;
    private final Episodes episodes;
    private final EpisodeService writing;
    private final Beginnings beginnings;

    public NewLessonPages(DeskContext desk, Episodes episodes, EpisodeService writing, Beginnings beginnings) {
        this.desk = desk;
        this.episodes = episodes;
        this.writing = writing;
        this.beginnings = beginnings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post("/desk/series/{id}/episodes", Role.EDUCATOR, this::begin);
    }

    private void begin(Context ctx) {
        var series = desk.series(ctx);
        String title = FormParameters.text(ctx, "title").strip();
        String from = FormParameters.text(ctx, "from");
        var level = Level.parse(FormParameters.text(ctx, "level"));
        var begun = beginning(desk.educator(ctx), series.id(), from, title);
        var leveled = begun.edit().level(level.orElse(begun.level())).done();
        var outcome = writing.create(desk.educator(ctx), series.id(), leveled);
        if (outcome.result().isPresent()) {
            String bring = FormParameters.text(ctx, "then").equals("bring") ? "/line/bring" : "";
            ctx.redirect("/desk/episodes/" + outcome.result().get().id() + bring, HttpStatus.SEE_OTHER);
            return;
        }
        var problems = new FieldProblems(outcome.problems());
        var view =
                new View(ctx.path(), series.title(), title, from, leveled.level(), List.of(Level.values()), problems);
        desk.pages().showAgain(ctx, "desk/new-episode", view);
    }

    /** @param from the id of a lesson of theirs, {@code last}, or anything else for what the series says */
    private EpisodeDocument beginning(EducatorId who, SeriesId series, String from, String title) {
        if (from.equals(LIKE_THE_LAST)) {
            return last(who, series)
                    .map(lesson -> Inheritance.like(lesson, title))
                    .orElseGet(() -> beginnings.begun(series, title));
        }
        return EpisodeId.parse(from)
                .flatMap(id -> writing.draft(who, id))
                .map(draft -> Inheritance.duplicate(draft.document(), title))
                .orElseGet(() -> beginnings.begun(series, title));
    }

    /** The lesson with the highest number, as it is being written. */
    private Optional<EpisodeDocument> last(EducatorId who, SeriesId series) {
        return episodes.inHand(series, 1).stream()
                .reduce((one, next) -> one.number() > next.number() ? one : next)
                .flatMap(episode -> writing.draft(who, episode.id()))
                .map(Draft::document);
    }

    /** The page of a lesson that could not be begun. */
    public record View(
            String path,
            String series,
            String title,
            String from,
            Level level,
            List<Level> levels,
            FieldProblems problems) {}
}
