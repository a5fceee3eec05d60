package groundbass.web.student.feed;

import groundbass.catalog.settings.SiteSettings;
import groundbass.effort.Heap;
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
import groundbass.web.student.lesson.TimedCache;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** Feeds and calendar of each series, the map of the site, and what robots are asked to leave alone. */
public final class FeedPages implements PageGroup {
    private static final int PART_OF_HEAP = 32;

    /** All that a file depends on: what it says of which series, as they are. */
    private record Key(String path, List<String> versions, SiteSettings settings) {}

    private final Lessons lessons;
    private final Feeds feeds;
    private final Pages pages;
    private final Supplier<SiteSettings> settings;
    private final TimedCache<Key, CachedResponse> known;

    public FeedPages(Pages pages, Lessons lessons, Releases releases, Supplier<SiteSettings> settings) {
        this.lessons = lessons;
        this.feeds = new Feeds(releases, pages::address);
        this.pages = pages;
        this.settings = settings;
        this.known = TimedCache.within(Heap.partOf(PART_OF_HEAP), CachedResponse::size);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/series/{slug}/feed.atom", Role.ANYONE, ctx -> send(ctx, AtomFeed.MEDIA_TYPE, this::atom));
        routes.get("/series/{slug}/feed.rss", Role.ANYONE, ctx -> send(ctx, RssFeed.MEDIA_TYPE, this::rss));
        routes.get(
                "/series/{slug}/calendar.ics", Role.ANYONE, ctx -> send(ctx, CalendarFile.MEDIA_TYPE, this::calendar));
        routes.get("/sitemap.xml", Role.ANYONE, this::map);
        routes.get("/robots.txt", Role.ANYONE, ctx -> answer(robots(), "text/plain; charset=utf-8")
                .send(ctx, CachedResponse.ASK_AGAIN));
    }

    /** What one of these files says of a series. */
    private interface Writing {
        String of(PublishedSeries series, SiteSettings chosen, String self);
    }

    private void send(Context ctx, String mediaType, Writing writing) {
        var series = Slug.parse(ctx.pathParam("slug")).flatMap(lessons::series).orElseThrow(NotFoundResponse::new);
        var chosen = settings.get();
        String self = pages.address(ctx.path()).toString();
        send(ctx, mediaType, List.of(series), chosen, () -> writing.of(series, chosen, self));
    }

    private void map(Context ctx) {
        var all = lessons.all();
        send(ctx, Sitemap.MEDIA_TYPE, all, settings.get(), () -> Sitemap.of(feeds.pages(all)));
    }

    /** Programs ask every hour for what changes every week: it is written once for all of them. */
    private void send(
            Context ctx, String mediaType, List<PublishedSeries> said, SiteSettings chosen, Supplier<String> text) {
        var key =
                new Key(ctx.path(), said.stream().map(PublishedSeries::version).toList(), chosen);
        known.get(key, () -> Optional.of(answer(text.get(), mediaType)))
                .orElseThrow()
                .send(ctx, CachedResponse.ASK_AGAIN);
    }

    private static CachedResponse answer(String text, String mediaType) {
        return CachedResponse.of(text.getBytes(StandardCharsets.UTF_8), mediaType);
    }

    private String atom(PublishedSeries series, SiteSettings chosen, String self) {
        return AtomFeed.of(feeds.of(series, chosen), self);
    }

    private String rss(PublishedSeries series, SiteSettings chosen, String self) {
        return RssFeed.of(feeds.of(series, chosen), self);
    }

    private String calendar(PublishedSeries series, SiteSettings chosen, String self) {
        Locale locale = Languages.spoken(Locale.forLanguageTag(chosen.language()));
        return CalendarFile.of(series.series().title(), feeds.events(series, locale));
    }

    /** RFC 9309: what is each person's own, and files that are counted when they are taken. */
    private String robots() {
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
}
