package groundbass.web.desk.site;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.question.Questions;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.document.Level;
import groundbass.post.Outbox;
import groundbass.release.care.BrokenFiles;
import groundbass.release.care.BrokenFiles.BrokenFile;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The desk's first page: every series with the lessons in hand, and how each stands. */
public final class OverviewPage implements PageGroup {
    /** How many published lessons of a series stand beside those that are still to come; a season of weeks. */
    private static final int PUBLISHED_SHOWN = 12;

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final LessonRows rows;
    private final Outbox outbox;
    private final Questions questions;
    private final BrokenFiles brokenFiles;
    private final Educators educators;
    private final Invitations invitations;

    public OverviewPage(
            DeskContext desk,
            SeriesCatalog catalog,
            Episodes episodes,
            PublishingViews publishing,
            Outbox outbox,
            Questions questions,
            BrokenFiles brokenFiles,
            Educators educators,
            Invitations invitations) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.rows = new LessonRows(publishing);
        this.outbox = outbox;
        this.questions = questions;
        this.brokenFiles = brokenFiles;
        this.educators = educators;
        this.invitations = invitations;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var reader = desk.pages().reader(ctx);
        var who = desk.educator(ctx);
        var row = rows.of(who, reader);
        var written = catalog.open(who, Deed.WRITE);
        var read = catalog.open(who, Deed.READ_FIGURES).stream()
                .filter(one -> !written.contains(one))
                .map(Series::title)
                .toList();
        var series = written.stream().map(one -> block(one, who, row)).toList();
        var standing = desk.standing(ctx);
        int undelivered = standing.keepsSite() ? outbox.undelivered() : 0;
        var view = new View(
                series,
                read,
                offers(who),
                standing.mayBegin(),
                List.of(Level.values()),
                undelivered,
                questions.waiting(who),
                brokenFiles.of(who));
        desk.pages().show(ctx, "desk/overview", view);
    }

    private List<OfferRow> offers(EducatorId who) {
        return invitations.to(who).stream()
                .map(one -> new OfferRow(
                        one.id(),
                        invitations.name(one.by()),
                        Message.of(one.offer().key(), invitations.title(one.offer())),
                        Message.of(one.offer().key() + ".may")))
                .toList();
    }

    private Block block(Series series, EducatorId who, Function<Episode, LessonRow> row) {
        var inHand = episodes.inHand(series.id(), PUBLISHED_SHOWN);
        boolean out = inHand.stream().anyMatch(Episode::isOut);
        var site = out ? Optional.of("/series/" + series.slug()) : Optional.<String>empty();
        int all = episodes.countIn(series.id());
        return new Block(
                series.id().value(),
                series.title(),
                series.summary(),
                series.owner().equals(who)
                        ? Optional.empty()
                        : educators.find(series.owner()).map(Educator::name),
                site,
                inHand.stream().map(row).toList(),
                all);
    }

    /**
     * What the page shows.
     *
     * @param read        titles of series of which they read the figures alone
     * @param offers      what they are invited to
     * @param begins      whether they may begin series
     * @param undelivered how many letters somebody has to look after
     * @param waiting how many questions wait for an answer
     * @param broken what lessons of theirs lack
     */
    public record View(
            List<Block> series,
            List<String> read,
            List<OfferRow> offers,
            boolean begins,
            List<Level> levels,
            int undelivered,
            int waiting,
            List<BrokenFile> broken) {
        /** Whether there is nothing here, of their own or shared. */
        public boolean isBare() {
            return series.isEmpty() && read.isEmpty();
        }
    }

    /** An invitation to who sits here: from whom, to what, and what they can do then. */
    public record OfferRow(String id, String inviter, Message offer, Message may) {}

    /**
     * A series.
     *
     * @param owner whose it is, where it is not theirs
     * @param site leads to its public page, once there is one
     * @param episodes those in hand
     * @param all how many there are
     */
    public record Block(
            String id,
            String title,
            String summary,
            Optional<String> owner,
            Optional<String> site,
            List<LessonRow> episodes,
            int all) {
        /** Whether lessons are left out here, so that the page with all of them is worth a link. */
        public boolean isShortened() {
            return episodes.size() < all;
        }
    }
}
