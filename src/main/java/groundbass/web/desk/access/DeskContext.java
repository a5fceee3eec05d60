package groundbass.web.desk.access;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
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
    private final Educators educators;
    private final Budget budget;

    public DeskContext(
            Pages pages,
            AccessFilter accessFilter,
            SeriesCatalog catalog,
            Episodes episodes,
            Styles styles,
            Educators educators,
            Budget budget) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.catalog = catalog;
        this.episodes = episodes;
        this.styles = styles;
        this.educators = educators;
        this.budget = budget;
    }

    public Pages pages() {
        return pages;
    }

    /** Who is signed in, on a route that lets anyone through. */
    public Optional<EducatorId> principal(Context ctx) {
        return accessFilter.principal(ctx).educator();
    }

    /** Who has come in, on a route that demands it: also who has to set up a second factor before the desk opens. */
    public EducatorId entered(Context ctx) {
        var principal = accessFilter.principal(ctx);
        return principal.educator().or(principal::lackingFactor).orElseThrow();
    }

    /** Whether who is signed in has to set up a second factor before the desk opens. */
    boolean lacksFactor(Context ctx) {
        return accessFilter.principal(ctx).lackingFactor().isPresent();
    }

    /** Who is signed in, on a route that demands it. */
    public EducatorId educator(Context ctx) {
        return principal(ctx).orElseThrow();
    }

    /** The name of somebody else who wrote something, also where their desk is closed by now; empty of who is signed in. */
    public Optional<String> nameOfOther(Context ctx, EducatorId who) {
        return principal(ctx).filter(who::equals).isPresent()
                ? Optional.empty()
                : educators.find(who).map(Educator::name);
    }

    /**
     * Draws, tells or proofreads for an educator, within what they may ask of the machine.
     *
     * @throws groundbass.effort.Busy where that is too much at this moment
     */
    public <T> T work(EducatorId who, Supplier<T> work) {
        return budget.spend(who.value(), work);
    }

    /**
     * The same for what is typed in an episode, which is answered also where a sign-in has run out meanwhile: within what
     * whoever types may ask, or then within what the owner of its series may.
     */
    public <T> T work(Context ctx, Episode episode, Supplier<T> work) {
        return work(principal(ctx).orElseGet(() -> seriesOf(episode).owner()), work);
    }

    /** The series that {@code {id}} names, to write in; 404 where there is none or they may not. */
    public Series series(Context ctx) {
        return series(ctx, Deed.WRITE);
    }

    /** The series that {@code {id}} names; 404 where there is none or whoever is signed in may not do that with it. */
    public Series series(Context ctx, Deed deed) {
        return SeriesId.parse(ctx.pathParam("id"))
                .flatMap(id -> catalog.open(educator(ctx), deed, id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** Whether whoever is signed in may do that with a series. */
    public boolean may(Context ctx, Series series, Deed deed) {
        return catalog.part(educator(ctx), series.id())
                .filter(part -> part.may(deed))
                .isPresent();
    }

    /** What whoever is signed in is to the site. */
    public SiteStanding standing(Context ctx) {
        return accessFilter.principal(ctx).desk().orElseThrow().standing();
    }

    /** The series of an episode. */
    public Series seriesOf(Episode episode) {
        return catalog.find(episode.series()).orElseThrow();
    }

    /** How the series of an episode has its sheets. */
    public HouseStyle style(Episode episode) {
        return styles.of(episode.series());
    }

    /** The episode that {@code {id}} names, to write in; 404 where there is none or they may not. */
    public Episode episode(Context ctx) {
        return episode(ctx, educator(ctx));
    }

    public Episode episode(Context ctx, EducatorId who) {
        return EpisodeId.parse(ctx.pathParam("id"))
                .flatMap(id -> episodes.open(who, Deed.WRITE, id))
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
