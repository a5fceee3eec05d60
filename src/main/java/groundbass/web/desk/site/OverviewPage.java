package groundbass.web.desk.site;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.document.Level;
import groundbass.post.Outbox;
import groundbass.release.BrokenFiles;
import groundbass.release.BrokenFiles.BrokenFile;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.EpisodeStatus;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** The desk's first page: every series with its episodes, and how each stands. */
public final class OverviewPage implements PageGroup {
    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final PublishingViews publishing;
    private final Outbox outbox;
    private final BrokenFiles brokenFiles;

    public OverviewPage(
            DeskContext desk,
            SeriesCatalog catalog,
            Episodes episodes,
            PublishingViews publishing,
            Outbox outbox,
            BrokenFiles brokenFiles) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.publishing = publishing;
        this.outbox = outbox;
        this.brokenFiles = brokenFiles;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var reader = desk.pages().reader(ctx);
        var who = desk.educator(ctx);
        var written = Set.copyOf(publishing.writtenSince(who));
        var series = catalog.ownedBy(who).stream()
                .map(one -> block(one, episode -> row(who, episode, written.contains(episode.id()), reader)))
                .toList();
        var broken = brokenFiles.of(desk.educator(ctx));
        var view = new View(series, List.of(Level.values()), outbox.undelivered(), broken);
        desk.pages().show(ctx, "desk/overview", view);
    }

    private Block block(Series series, Function<Episode, Row> row) {
        var rows = episodes.in(series.id()).stream().map(row).toList();
        boolean out = rows.stream().anyMatch(one -> one.standing().look().equals("out"));
        var site = out ? Optional.of("/series/" + series.slug()) : Optional.<String>empty();
        return new Block(series.id().value(), series.title(), series.summary(), site, rows);
    }

    /** @param written whether there is a draft younger than what was fixed, so that the two are worth comparing */
    private Row row(EducatorId who, Episode episode, boolean written, Reader reader) {
        var standing = publishing.standing(episode, reader);
        var troubles = episode.isPublished() ? List.<Message>of() : publishing.troubles(episode);
        var differs = written ? publishing.differs(who, episode) : Optional.<Message>empty();
        return new Row(
                "/desk/episodes/" + episode.id(), episode.number(), episode.title(), standing, troubles, differs);
    }

    /**
     * What the page shows.
     *
     * @param undelivered how many letters somebody has to look after
     * @param broken what lessons of theirs lack
     */
    public record View(List<Block> series, List<Level> levels, int undelivered, List<BrokenFile> broken) {}

    /** A series; {@code site} leads to its public page, once there is one. */
    public record Block(String id, String title, String summary, Optional<String> site, List<Row> episodes) {}

    /** An episode: where it stands, what is in the way of its hour, and in what its draft differs from what is fixed. */
    public record Row(
            String path,
            int number,
            String title,
            EpisodeStatus standing,
            List<Message> troubles,
            Optional<Message> differs) {}
}
