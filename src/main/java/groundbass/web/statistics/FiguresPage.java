package groundbass.web.statistics;

import groundbass.audience.statistics.EpisodeUse;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.statistics.OwnSeries.Board;
import groundbass.web.view.PageOf;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Set;
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
        var shelf = services.ownSeries(ctx);
        var invented = services.statistics().invented();
        var series = shelf.page(page).boards().stream()
                .map(board -> block(board, shelf.board(board.series().id()).orElseThrow(), invented, reader))
                .toList();
        if (series.isEmpty() && page.number() > 1) {
            throw new NotFoundResponse();
        }
        services.pages()
                .show(
                        ctx,
                        "statistics/overview",
                        new View(
                                series,
                                services.seesTakers(ctx),
                                page.turning(shelf.ids().size())));
    }

    /** @param whole the series with all its lessons, of which {@code board} has a part */
    private Block block(Board board, Board whole, Set<EpisodeId> invented, Reader reader) {
        var zone = board.series().zone();
        var uses = services.statistics().ofEpisodes(board.ids());
        var rows = IntStream.range(0, uses.size())
                .mapToObj(i -> entry(board.episodes().get(i), uses.get(i)))
                .toList();
        return new Block(
                board.series().id().value(),
                board.series().title(),
                whole.ids().stream().anyMatch(invented::contains),
                WeekChart.of(services.statistics().byWeek(whole.scope(), services.weeks(zone)), services.today(zone)),
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
