package groundbass.web.statistics;

import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.Weeks;
import groundbass.audience.student.Students;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.web.shell.Doorkeeper;
import groundbass.web.shell.Pages;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;

/** What these pages work with. */
record Room(
        Pages pages,
        Doorkeeper doorkeeper,
        SeriesCatalog catalog,
        Episodes episodes,
        Statistics statistics,
        Students students,
        Clock clock) {
    /** What belongs to the educator who asks, on a route that demands one. */
    Shelf shelf(Context ctx) {
        var owner = doorkeeper.visitor(ctx).educator().orElseThrow();
        return new Shelf(catalog.ownedBy(owner).stream()
                .map(series -> new Shelf.Board(series, episodes.publishedIn(series.id())))
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
