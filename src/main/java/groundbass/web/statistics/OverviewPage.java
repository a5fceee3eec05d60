package groundbass.web.statistics;

import groundbass.audience.statistics.EpisodeUse;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.statistics.Shelf.Board;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.util.List;

/** Every series by week, and its lessons in numbers. */
final class OverviewPage implements PageGroup {
    private final Room room;

    OverviewPage(Room room) {
        this.room = room;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var reader = room.pages().reader(ctx);
        var series = room.shelf(ctx).boards().stream()
                .map(board -> block(board, reader))
                .toList();
        room.pages().show(ctx, "statistics/overview", new View(series));
    }

    private Block block(Board board, Reader reader) {
        var zone = board.series().zone();
        var uses = room.statistics().ofEpisodes(board.ids());
        var rows = board.episodes().stream()
                .map(episode -> new Entry(
                        "/desk/statistics/episodes/" + episode.id(),
                        episode.number(),
                        episode.title(),
                        uses.get(board.episodes().indexOf(episode))))
                .toList();
        return new Block(
                board.series().id().value(),
                board.series().title(),
                Room.isDemo(room.statistics().students(board.ids())),
                WeekChart.of(room.statistics().byWeek(board.ids(), zone), room.today(zone)),
                Days.of(reader, zone),
                rows);
    }

    /** What the page shows. */
    public record View(List<Block> series) {}

    /** A series; {@code demo} where its figures are invented. */
    public record Block(String id, String title, boolean demo, WeekChart chart, Days days, List<Entry> episodes) {}

    /** An episode. */
    public record Entry(String path, int number, String title, EpisodeUse use) {}
}
