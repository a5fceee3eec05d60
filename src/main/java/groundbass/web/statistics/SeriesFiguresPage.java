package groundbass.web.statistics;

import groundbass.audience.statistics.HourUse;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.statistics.OpenSeries.Board;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.IntStream;

/** One series: its lessons at equal age, who comes back, how many stay, and at which hours it is used. */
final class SeriesFiguresPage implements PageGroup {
    /** Of how many weeks in which somebody took something it is told how many students did. */
    private static final List<Integer> STAYING = List.of(1, 2, 4, 8);
    /** The last lessons; a table to download has all of them. */
    private static final int SHOWN = 26;

    private final StatisticsServices services;

    SeriesFiguresPage(StatisticsServices services) {
        this.services = services;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/statistics/series/{id}", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var board = services.board(ctx);
        var id = board.series().id();
        var use = services.use();
        var stays = use.staying(id, STAYING);
        var view = new View(
                ctx.path(),
                board.series(),
                services.statistics().invented().contains(id),
                Days.of(services.pages().reader(ctx), board.series().zone()),
                AgeChart.of(services.ages(lastOf(board))),
                CohortGrid.of(use.cohorts(id, CohortGrid.MOST)),
                IntStream.range(0, STAYING.size())
                        .mapToObj(i -> Stay.of(STAYING.get(i), stays.get(i), stays.get(0)))
                        .toList(),
                ClockGrid.of(use.clock(id)));
        services.pages().show(ctx, "statistics/series", view);
    }

    private static List<Episode> lastOf(Board board) {
        var all = board.episodes();
        return all.subList(Math.max(0, all.size() - SHOWN), all.size());
    }

    /**
     * What the page shows.
     *
     * @param demo whether its figures are invented
     */
    public record View(
            String path,
            Series series,
            boolean demo,
            Days days,
            AgeChart ages,
            CohortGrid cohorts,
            List<Stay> stays,
            ClockGrid clock) {
        /** Names the hour in which the most was taken. */
        public String hour(HourUse use) {
            return days.hour(use.weekday(), use.localHour());
        }
    }

    /**
     * How many students took something in so many weeks at least.
     *
     * @param share how many of a hundred of all
     */
    public record Stay(int weeks, long students, long share) {
        static Stay of(int weeks, long students, long all) {
            return new Stay(weeks, students, all == 0 ? 0 : Math.round(100.0 * students / all));
        }
    }
}
