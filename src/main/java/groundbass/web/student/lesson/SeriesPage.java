package groundbass.web.student.lesson;

import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Series;
import groundbass.catalog.settings.SiteSettings;
import groundbass.identity.Slug;
import groundbass.release.SeriesReleases;
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
import java.util.function.Supplier;

/** A series: what it is about, and its lessons in their order. */
public final class SeriesPage implements PageGroup {
    /** Lessons on a page. */
    private static final int SHOWN = 100;

    /** Bytes of all bundles above which there is no file of the whole series: it could not be gone on with. */
    private static final long LARGEST = 8L * 1000 * 1000 * 1000;

    private final Pages pages;
    private final Lessons lessons;
    private final Cards cards;
    private final SeriesReleases sizes;
    private final Supplier<SiteSettings> settings;

    public SeriesPage(
            Pages pages, Lessons lessons, Cards cards, SeriesReleases sizes, Supplier<SiteSettings> settings) {
        this.pages = pages;
        this.lessons = lessons;
        this.cards = cards;
        this.sizes = sizes;
        this.settings = settings;
    }

    public static String path(Series series) {
        return Paths.of(series);
    }

    /** Where all of a series can be taken home at once. */
    public static String bundle(String slug) {
        return "/files/series/" + slug + "/all.zip";
    }

    /** Whether all of a series can be: where there is more than one lesson, and no more than anybody can fetch. */
    public static boolean isBundled(PublishedSeries series, SeriesReleases sizes) {
        return bundleBytes(series, sizes).isPresent();
    }

    private static Optional<Long> bundleBytes(PublishedSeries series, SeriesReleases sizes) {
        return Optional.of(series)
                .filter(found -> found.parts().size() > 1)
                .map(found -> sizes.bundleBytes(found.series().id()))
                .filter(bytes -> bytes > 0 && bytes <= LARGEST);
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
        boolean signIn = settings.get().downloadsNeedSignIn();
        String version = found.version() + cards.version() + "-" + page.number() + (signIn ? "-sign-in" : "");
        pages.showShared(ctx, "student/series", version, reader -> view(found, page, signIn, reader));
    }

    private View view(PublishedSeries found, PageOf page, boolean signIn, Reader reader) {
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
                bundleBytes(found, sizes)
                        .map(bytes -> new Bundle(bundle(series.slug().value()), reader.size(bytes), signIn)),
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
     * @param bundle all of it as one file
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
            Optional<Bundle> bundle,
            int all,
            List<EpisodeCard> episodes,
            PageOf.Turning turning)
            implements LinkPreview.Shown {
        @Override
        public LinkPreview preview() {
            return new LinkPreview(summary.isBlank() ? title : summary, false, Optional.empty());
        }
    }

    /** @param signIn whether whoever takes it has to be signed in */
    public record Bundle(String path, String size, boolean signIn) {}

    /** @param title empty where it is not to be known */
    public record Next(Instant at, String title) {}
}
