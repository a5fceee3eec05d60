package groundbass.web.desk.site;

import groundbass.catalog.episode.Episodes;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.view.PageOf;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** All lessons of a series by number, page after page; the desk's first page has those in hand. */
public final class LessonListPage implements PageGroup {
    private static final int SHOWN = 50;

    private final DeskContext desk;
    private final Episodes episodes;
    private final LessonRows rows;

    public LessonListPage(DeskContext desk, Episodes episodes, PublishingViews publishing) {
        this.desk = desk;
        this.episodes = episodes;
        this.rows = new LessonRows(publishing);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/series/{id}/lessons", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var series = desk.series(ctx);
        var page = Turned.to(ctx, SHOWN);
        var row = rows.of(desk.educator(ctx), desk.pages().reader(ctx));
        var shown = episodes.in(series.id(), page.skipped(), page.size()).stream()
                .map(row)
                .toList();
        if (shown.isEmpty() && page.number() > 1) {
            throw new NotFoundResponse();
        }
        var turning = page.turning(episodes.countIn(series.id()));
        desk.pages().show(ctx, "desk/lessons", new View(series.title(), shown, turning));
    }

    /** What the page shows. */
    public record View(String title, List<LessonRow> episodes, PageOf.Turning turning) {}
}
