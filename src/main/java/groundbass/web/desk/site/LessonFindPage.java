package groundbass.web.desk.site;

import static java.util.stream.Collectors.toMap;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.LastWritten;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.view.PageOf;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Lessons of all series, those written last first, and those that have certain words in their title. */
public final class LessonFindPage implements PageGroup {
    private static final int SHOWN = 50;
    private static final int LONGEST = 200;
    private static final int MOST_WORDS = 8;

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final LessonRows rows;

    public LessonFindPage(DeskContext desk, SeriesCatalog catalog, Episodes episodes, PublishingViews publishing) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.rows = new LessonRows(publishing);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/lessons", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var who = desk.educator(ctx);
        String asked = asked(ctx);
        var page = Turned.to(ctx, SHOWN);
        var found = episodes.writtenLast(who, words(asked), page.skipped(), page.size() + 1);
        if (found.isEmpty() && page.number() > 1) {
            throw new NotFoundResponse();
        }
        var titles = catalog.open(who, Deed.WRITE).stream().collect(toMap(Series::id, Series::title));
        var row = rows.of(who, desk.pages().reader(ctx));
        var shown = found.stream()
                .limit(page.size())
                .map(one -> row(one, titles, row))
                .toList();
        String path = asked.isEmpty()
                ? page.path()
                : page.path() + "?title=" + URLEncoder.encode(asked, StandardCharsets.UTF_8);
        var turning = new PageOf(path, page.number(), page.size()).turning(found.size() > page.size());
        desk.pages().show(ctx, "desk/find", new View(asked, shown, turning));
    }

    private static Row row(LastWritten one, Map<SeriesId, String> titles, Function<Episode, LessonRow> row) {
        var episode = one.episode();
        return new Row(row.apply(episode), titles.getOrDefault(episode.series(), ""), one.at());
    }

    private static String asked(Context ctx) {
        String asked = Optional.ofNullable(ctx.queryParam("title")).orElse("").strip();
        return asked.substring(0, Math.min(LONGEST, asked.length()));
    }

    private static List<String> words(String asked) {
        return Stream.of(asked.split("\\s+"))
                .filter(word -> !word.isEmpty())
                .limit(MOST_WORDS)
                .toList();
    }

    /**
     * What the page shows.
     *
     * @param asked what somebody looks for; empty where that is nothing
     */
    public record View(String asked, List<Row> lessons, PageOf.Turning turning) {}

    /** A lesson, the series it belongs to, and when it was written last. */
    public record Row(LessonRow lesson, String series, Instant at) {}
}
