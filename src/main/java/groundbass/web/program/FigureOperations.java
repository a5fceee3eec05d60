package groundbass.web.program;

import groundbass.audience.statistics.DownloadCounts;
import groundbass.audience.statistics.EpisodeUse;
import groundbass.audience.statistics.FileUse;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.audience.statistics.WeekUse;
import groundbass.audience.statistics.Weeks;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** How often what was taken, of what ever was out. Who took it is told at the desk alone. */
final class FigureOperations implements PageGroup {
    private static final int USUAL_WEEKS = 12;
    private static final int MOST_WEEKS = 52;

    private final Door door;
    private final Addressed addressed;
    private final Statistics statistics;
    private final Clock clock;

    FigureOperations(Door door, Addressed addressed, Statistics statistics, Clock clock) {
        this.door = door;
        this.addressed = addressed;
        this.statistics = statistics;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(
                Door.ROOT + "/series/{series}/statistics",
                Role.EXEMPT,
                door.open(ProgramScope.STATISTICS, this::ofSeries));
        routes.get(
                Door.ROOT + "/lessons/{lesson}/statistics",
                Role.EXEMPT,
                door.open(ProgramScope.STATISTICS, this::ofLesson));
    }

    private void ofSeries(Call call) {
        var series = addressed.series(call, Deed.READ_FIGURES);
        var lessons = addressed.episodes().everPublishedIn(series.id()).stream()
                .map(Episode::id)
                .toList();
        var uses = statistics.ofEpisodes(lessons).stream()
                .map(use -> view(use).map())
                .toList();
        Answers.show(
                call,
                Members.of("series", series.id().value())
                        .and("zone", series.zone().getId())
                        .and("weeks", weeks(call, series, new StatisticsScope.OfSeries(series.id())))
                        .and("lessons", uses)
                        .map());
    }

    private void ofLesson(Call call) {
        var lesson = addressed.lesson(call, Deed.READ_FIGURES);
        if (!lesson.isPublished()) {
            throw new NotFoundResponse();
        }
        var series = addressed.seriesOf(lesson);
        var use = statistics.ofEpisode(lesson.id());
        Answers.show(
                call,
                view(use)
                        .and("zone", series.zone().getId())
                        .and("weeks", weeks(call, series, new StatisticsScope.OfLesson(lesson.id())))
                        .and(
                                "files",
                                use.files().stream().map(FigureOperations::view).toList())
                        .map());
    }

    /** Those of the last weeks in which something was taken. */
    private List<Map<String, Object>> weeks(Call call, Series series, StatisticsScope scope) {
        int count = Listing.number(call.ctx(), "weeks", USUAL_WEEKS, 1, MOST_WEEKS);
        var today = LocalDate.ofInstant(clock.instant(), series.zone());
        return statistics.byWeek(scope, Weeks.until(today, count, series.zone())).stream()
                .map(FigureOperations::view)
                .toList();
    }

    private static Members view(EpisodeUse use) {
        return Members.of("lesson", use.episode().value())
                .and("students", use.students())
                .and("anonymous", use.anonymous())
                .and("robots", use.robots())
                .and("downloads", view(use.downloads()));
    }

    private static Map<String, Object> view(WeekUse week) {
        return Members.of("monday", week.monday().toString())
                .and("students", week.students())
                .and("downloads", view(week.downloads()))
                .map();
    }

    private static Map<String, Object> view(FileUse file) {
        return Members.of("name", file.name())
                .and("downloads", view(file.downloads()))
                .map();
    }

    private static Map<String, Object> view(DownloadCounts counts) {
        return Members.of("complete", counts.complete())
                .and("brokenOff", counts.brokenOff())
                .and("handedOver", counts.handedOver())
                .and("running", counts.running())
                .map();
    }
}
