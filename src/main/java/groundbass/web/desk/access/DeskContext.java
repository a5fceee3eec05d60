package groundbass.web.desk.access;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.Styles;
import groundbass.document.HouseStyle;
import groundbass.effort.Budget;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Pages;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;
import java.util.function.Supplier;

/** What every page of the desk asks: who is there, and which of their things the address names. */
public final class DeskContext {
    /** Where the page of an episode stands. */
    public static final String EPISODE = "/desk/episodes/{id}";

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Styles styles;
    private final Budget budget;

    public DeskContext(
            Pages pages,
            AccessFilter accessFilter,
            SeriesCatalog catalog,
            Episodes episodes,
            Styles styles,
            Budget budget) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.catalog = catalog;
        this.episodes = episodes;
        this.styles = styles;
        this.budget = budget;
    }

    public Pages pages() {
        return pages;
    }

    /** Who is signed in, on a route that lets anyone through. */
    public Optional<EducatorId> principal(Context ctx) {
        return accessFilter.principal(ctx).educator();
    }

    /** Who is signed in, on a route that demands it. */
    public EducatorId educator(Context ctx) {
        return principal(ctx).orElseThrow();
    }

    /**
     * Draws, tells or proofreads for an educator, within what they may ask of the machine.
     *
     * @throws groundbass.effort.Busy where that is too much at this moment
     */
    public <T> T work(EducatorId who, Supplier<T> work) {
        return budget.spend(who.value(), work);
    }

    /** The series that {@code {id}} names; 404 where there is none or it is somebody else's. */
    public Series series(Context ctx) {
        return SeriesId.parse(ctx.pathParam("id"))
                .flatMap(id -> catalog.ownedBy(educator(ctx), id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The series of an episode of theirs. */
    public Series seriesOf(Episode episode) {
        return catalog.find(episode.series()).orElseThrow();
    }

    /** How the series of an episode has its sheets. */
    public HouseStyle style(Episode episode) {
        return styles.of(episode.series());
    }

    /** The episode that {@code {id}} names; 404 where there is none or it is somebody else's. */
    public Episode episode(Context ctx) {
        return episode(ctx, educator(ctx));
    }

    public Episode episode(Context ctx, EducatorId who) {
        return EpisodeId.parse(ctx.pathParam("id"))
                .flatMap(id -> episodes.ownedBy(who, id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** Where the page of the episode stands that the address names. */
    public static String path(Context ctx) {
        return EPISODE.replace("{id}", ctx.pathParam("id"));
    }

    public static String path(Episode episode) {
        return EPISODE.replace("{id}", episode.id().value());
    }
}
