package groundbass.web.student.lesson;

import groundbass.identity.Slug;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** A series: what it is about, and its lessons in their order. */
public final class SeriesPage implements PageGroup {
    private final Pages pages;
    private final Lessons lessons;
    private final Cards cards;

    public SeriesPage(Pages pages, Lessons lessons, Cards cards) {
        this.pages = pages;
        this.lessons = lessons;
        this.cards = cards;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/series/{slug}", Role.ANYONE, this::series);
    }

    private void series(Context ctx) {
        var found = Slug.parse(ctx.pathParam("slug")).flatMap(lessons::series).orElseThrow(NotFoundResponse::new);
        pages.showShared(ctx, "student/series", found.version() + cards.version(), reader -> view(found, reader));
    }

    private View view(PublishedSeries found, Reader reader) {
        var series = found.series();
        var episodes = found.parts().stream()
                .map(part -> cards.of(series, part, reader))
                .toList();
        return new View(series.title(), series.summary(), episodes);
    }

    /** What the template shows. */
    public record View(String title, String summary, List<EpisodeCard> episodes) {}
}
