package groundbass.web.statistics;

import groundbass.audience.statistics.SeriesUse;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.Weeks;
import groundbass.audience.student.Students;
import groundbass.audience.visit.VisitFigures;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.release.find.LessonIndex;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Pages;
import groundbass.web.statistics.OpenSeries.Board;
import groundbass.web.statistics.OpenSeries.Lesson;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/** What these pages work with. */
record StatisticsServices(
        Pages pages,
        AccessFilter accessFilter,
        SeriesCatalog catalog,
        Episodes episodes,
        Statistics statistics,
        SeriesUse use,
        VisitFigures visits,
        ReleasedLines released,
        LessonIndex index,
        BooleanSupplier counting,
        Students students,
        Clock clock) {
    /** The series whose figures the educator who asks may read, on a route that demands one. */
    OpenSeries openSeries(Context ctx) {
        return open(ctx, Deed.READ_FIGURES);
    }

    /** Of these the one that the address names. */
    Board board(Context ctx) {
        return SeriesId.parse(ctx.pathParam("id"))
                .flatMap(id -> catalog.open(educator(ctx), Deed.READ_FIGURES, id))
                .map(this::board)
                .orElseThrow(NotFoundResponse::new);
    }

    /** The lesson that the address names, of such a series. */
    Lesson lesson(Context ctx) {
        return lesson(ctx, Deed.READ_FIGURES);
    }

    /** Likewise, where they may see by their addresses who took something. */
    Lesson takenLesson(Context ctx) {
        return lesson(ctx, Deed.SEE_TAKERS);
    }

    private Lesson lesson(Context ctx, Deed deed) {
        return EpisodeId.parse(ctx.pathParam("id"))
                .flatMap(episodes::find)
                .filter(Episode::isPublished)
                .flatMap(episode ->
                        catalog.open(educator(ctx), deed, episode.series()).map(series -> new Lesson(series, episode)))
                .orElseThrow(NotFoundResponse::new);
    }

    /** Lessons at equal age, in their order. */
    List<AgeChart.Row> ages(List<Episode> lessons) {
        var ages = statistics.ages(lessons.stream().map(Episode::id).toList());
        return IntStream.range(0, lessons.size())
                .mapToObj(i -> AgeChart.Row.of(lessons.get(i), ages.get(i), clock.instant()))
                .toList();
    }

    /** Of these the ones of which they may see by their addresses who took something. */
    OpenSeries takenSeries(Context ctx) {
        return open(ctx, Deed.SEE_TAKERS);
    }

    /** Whether the educator who asks may see by their addresses who took something of this series, or of any. */
    boolean seesTakers(Context ctx, SeriesId series) {
        return catalog.open(educator(ctx), Deed.SEE_TAKERS, series).isPresent();
    }

    boolean seesTakers(Context ctx) {
        return !catalog.open(educator(ctx), Deed.SEE_TAKERS).isEmpty();
    }

    private EducatorId educator(Context ctx) {
        return accessFilter.principal(ctx).educator().orElseThrow();
    }

    /** The series whose figures they may read, without their lessons. */
    List<Series> readable(Context ctx) {
        return catalog.open(educator(ctx), Deed.READ_FIGURES);
    }

    /** Those of whose takers they may see the addresses. */
    List<SeriesId> taken(Context ctx) {
        return catalog.open(educator(ctx), Deed.SEE_TAKERS).stream()
                .map(Series::id)
                .toList();
    }

    private OpenSeries open(Context ctx, Deed deed) {
        return new OpenSeries(
                catalog.open(educator(ctx), deed).stream().map(this::board).toList());
    }

    private Board board(Series series) {
        return new Board(series, episodes.everPublishedIn(series.id()));
    }

    LocalDate today(ZoneId zone) {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** What charts show, up to this week. */
    Weeks weeks(ZoneId zone) {
        return Weeks.until(today(zone), WeekChart.MOST, zone);
    }
}
