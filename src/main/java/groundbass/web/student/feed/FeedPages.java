package groundbass.web.student.feed;

import groundbass.catalog.settings.SiteSettings;
import groundbass.identity.Slug;
import groundbass.release.Releases;
import groundbass.text.Languages;
import groundbass.web.answer.CachedResponse;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.student.lesson.Lessons;
import groundbass.web.student.lesson.PublishedSeries;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;

/** Feeds and calendar of each series, the map of the site, and what robots are asked to leave alone. */
public final class FeedPages implements PageGroup {
    private final Lessons lessons;
    private final Feeds feeds;
    private final Pages pages;
    private final Supplier<SiteSettings> settings;

    public FeedPages(Pages pages, Lessons lessons, Releases releases, Supplier<SiteSettings> settings) {
        this.lessons = lessons;
        this.feeds = new Feeds(releases, pages::address);
        this.pages = pages;
        this.settings = settings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/series/{slug}/feed.atom", Role.ANYONE, ctx -> send(ctx, AtomFeed.MEDIA_TYPE, this::atom));
        routes.get("/series/{slug}/feed.rss", Role.ANYONE, ctx -> send(ctx, RssFeed.MEDIA_TYPE, this::rss));
        routes.get(
                "/series/{slug}/calendar.ics", Role.ANYONE, ctx -> send(ctx, CalendarFile.MEDIA_TYPE, this::calendar));
        routes.get("/sitemap.xml", Role.ANYONE, ctx -> send(ctx, Sitemap.MEDIA_TYPE, this::map));
        routes.get("/robots.txt", Role.ANYONE, ctx -> send(ctx, "text/plain; charset=utf-8", this::robots));
    }

    private static void send(Context ctx, String mediaType, Function<Context, String> content) {
        CachedResponse.of(content.apply(ctx).getBytes(StandardCharsets.UTF_8), mediaType)
                .send(ctx, CachedResponse.ASK_AGAIN);
    }

    private PublishedSeries series(Context ctx) {
        return Slug.parse(ctx.pathParam("slug")).flatMap(lessons::series).orElseThrow(NotFoundResponse::new);
    }

    private String atom(Context ctx) {
        return AtomFeed.of(feeds.of(series(ctx), settings.get()), self(ctx));
    }

    private String rss(Context ctx) {
        return RssFeed.of(feeds.of(series(ctx), settings.get()), self(ctx));
    }

    private String calendar(Context ctx) {
        var published = series(ctx);
        Locale locale = Languages.spoken(Locale.forLanguageTag(settings.get().language()));
        return CalendarFile.of(published.series().title(), feeds.events(published, locale));
    }

    private String map(Context ctx) {
        return Sitemap.of(feeds.pages(lessons.all()));
    }

    /** RFC 9309: what is each person's own, and files that are counted when they are taken. */
    private String robots(Context ctx) {
        return """
                User-agent: *
                Disallow: /desk
                Disallow: /me
                Disallow: /files/
                Disallow: /play/
                Disallow: /news/
                Disallow: /sign-in

                Sitemap: %s
                """.formatted(pages.address("/sitemap.xml"));
    }

    private String self(Context ctx) {
        return pages.address(ctx.path()).toString();
    }
}
