package groundbass.web.statistics;

import groundbass.audience.statistics.EpisodeUse;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.view.PageOf;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Every series by week, and its lessons in numbers. */
final class FiguresPage implements PageGroup {
    /** Lessons on a page. */
    private static final int SHOWN = 100;

    private final StatisticsServices services;

    FiguresPage(StatisticsServices services) {
        this.services = services;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var reader = services.pages().reader(ctx);
        var page = Turned.to(ctx, SHOWN);
        var all = services.readable(ctx);
        var lessons = all.stream().collect(Collectors.toMap(Series::id, this::lessons));
        var parts = SeriesOnPage.on(page, all, series -> lessons.get(series.id()));
        if (parts.isEmpty() && page.number() > 1) {
            throw new NotFoundResponse();
        }
        var invented = services.statistics().invented();
        var blocks = parts.stream()
                .map(part -> block(part, invented.contains(part.series().id()), reader))
                .toList();
        var turning = page.turning(
                lessons.values().stream().mapToInt(Integer::intValue).sum());
        services.pages().show(ctx, "statistics/overview", new View(blocks, services.seesTakers(ctx), turning));
    }

    private int lessons(Series series) {
        return services.episodes().countEverPublishedIn(series.id());
    }

    private Block block(SeriesOnPage part, boolean demo, Reader reader) {
        var series = part.series();
        var zone = series.zone();
        var episodes = services.episodes().everPublishedIn(series.id(), part.skipped(), part.most());
        var uses = services.statistics()
                .ofEpisodes(episodes.stream().map(Episode::id).toList());
        var rows = IntStream.range(0, uses.size())
                .mapToObj(i -> entry(episodes.get(i), uses.get(i)))
                .toList();
        var weeks = services.statistics().byWeek(new StatisticsScope.OfSeries(series.id()), services.weeks(zone));
        return new Block(
                series.id().value(),
                series.title(),
                demo,
                WeekChart.of(weeks, services.today(zone)),
                Days.of(reader, zone),
                rows);
    }

    private static Entry entry(Episode episode, EpisodeUse use) {
        return new Entry("/desk/statistics/episodes/" + episode.id(), episode.number(), episode.title(), use);
    }

    /**
     * What the page shows.
     *
     * @param takers whether its reader may see of any series by their addresses who took something
     */
    public record View(List<Block> series, boolean takers, PageOf.Turning turning) {}

    /** A series; {@code demo} where its figures are invented. */
    public record Block(String id, String title, boolean demo, WeekChart chart, Days days, List<Entry> episodes) {}

    /** An episode. */
    public record Entry(String path, int number, String title, EpisodeUse use) {}
}
