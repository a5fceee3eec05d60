package groundbass.web.student.lesson;

import groundbass.catalog.series.Outlook;
import groundbass.identity.Slug;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.LinkPreview;
import groundbass.web.view.PageOf;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A series: what it is about, and its lessons in their order. */
public final class SeriesPage implements PageGroup {
    /** Lessons on a page. */
    private static final int SHOWN = 100;

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
        var page = Turned.to(ctx, SHOWN);
        if (page.skipped() >= found.parts().size()) {
            throw new NotFoundResponse();
        }
        String version = found.version() + cards.version() + "-" + page.number();
        pages.showShared(ctx, "student/series", version, reader -> view(found, page, reader));
    }

    private View view(PublishedSeries found, PageOf page, Reader reader) {
        var series = found.series();
        int all = found.parts().size();
        var episodes = found.parts().stream()
                .skip(page.skipped())
                .limit(page.size())
                .map(part -> cards.of(series, part, reader))
                .toList();
        var coming = found.coming().stream()
                .map(one -> new Next(one.at(), found.outlook() == Outlook.TITLES ? one.title() : ""))
                .toList();
        boolean calendar = found.outlook() != Outlook.NOTHING;
        return new View(
                series.title(),
                series.slug().value(),
                Paths.of(series),
                cards.language(found),
                series.summary(),
                coming,
                calendar,
                all,
                episodes,
                page.turning(all));
    }

    /**
     * What the template shows.
     *
     * @param language of its title and summary; empty where it is not known
     * @param coming what comes next, as far as it may be known
     * @param calendar whether there is a calendar of it
     * @param all how many lessons there are on all pages
     */
    public record View(
            String title,
            String slug,
            String path,
            String language,
            String summary,
            List<Next> coming,
            boolean calendar,
            int all,
            List<EpisodeCard> episodes,
            PageOf.Turning turning)
            implements LinkPreview.Shown {
        @Override
        public LinkPreview preview() {
            return new LinkPreview(summary.isBlank() ? title : summary, false, Optional.empty());
        }
    }

    /** @param title empty where it is not to be known */
    public record Next(Instant at, String title) {}
}
