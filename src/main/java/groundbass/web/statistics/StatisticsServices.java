package groundbass.web.statistics;

import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.Weeks;
import groundbass.audience.student.Students;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
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

    private OwnSeries open(Context ctx, Deed deed) {
        var who = accessFilter.principal(ctx).educator().orElseThrow();
        return new OwnSeries(catalog.open(who, deed).stream()
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
