package groundbass.web.statistics;

import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.Weeks;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Pages;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;

/** What these pages work with. */
record StatisticsServices(
        Pages pages,
        AccessFilter accessFilter,
        SeriesCatalog catalog,
        Episodes episodes,
        Statistics statistics,
        Students students,
        Clock clock) {
    /** The series whose figures the educator who asks may read, on a route that demands one. */
    OwnSeries ownSeries(Context ctx) {
        return open(ctx, Deed.READ_FIGURES);
    }

    /** Of these the ones of which they may see by their addresses who took something. */
    OwnSeries takenSeries(Context ctx) {
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

    private OwnSeries open(Context ctx, Deed deed) {
        return new OwnSeries(catalog.open(educator(ctx), deed).stream()
                .map(series -> new OwnSeries.Board(series, episodes.everPublishedIn(series.id())))
                .toList());
    }

    LocalDate today(ZoneId zone) {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** What charts show, up to this week. */
    Weeks weeks(ZoneId zone) {
        return Weeks.until(today(zone), WeekChart.MOST, zone);
    }
}
