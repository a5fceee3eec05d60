package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.identity.Slug;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.Query;

/** The episodes: found by everyone, and led from draft to scheduled to published by whoever keeps the calendar. */
public final class Episodes {
    private final Jdbi jdbi;

    public Episodes(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    public Optional<Episode> find(EpisodeId id) {
        return jdbi.withHandle(handle -> find(handle, id));
    }

    public Optional<Episode> find(Handle handle, EpisodeId id) {
        return one(select(handle, "where e.id = :id").bind("id", id.value()));
    }

    /** The episode, where this educator owns its series. */
    public Optional<Episode> ownedBy(EducatorId owner, EpisodeId id) {
        return jdbi.withHandle(handle -> ownedBy(handle, owner, id));
    }

    public Optional<Episode> ownedBy(Handle handle, EducatorId owner, EpisodeId id) {
        return one(select(handle, "join series s on s.id = e.series_id where e.id = :id and s.educator_id = :owner")
                .bind("id", id.value())
                .bind("owner", owner.value()));
    }

    /** By its readable address, published or not. */
    public Optional<Episode> find(Slug series, int number) {
        return jdbi.withHandle(handle ->
                one(select(handle, "join series s on s.id = e.series_id where s.slug = :slug and e.number = :number")
                        .bind("slug", series.value())
                        .bind("number", number)));
    }

    /** For the desk: all of a series by number. */
    public List<Episode> in(SeriesId series) {
        return jdbi.withHandle(handle -> in(handle, series));
    }

    public List<Episode> in(Handle handle, SeriesId series) {
        return list(
                select(handle, "where e.series_id = :series order by e.number").bind("series", series.value()));
    }

    /** For the desk: so many of a series by number, after those that are skipped. */
    public List<Episode> in(SeriesId series, int skipped, int most) {
        return jdbi.withHandle(handle -> list(select(handle, """
                        where e.series_id = :series order by e.number
                        offset :skipped rows fetch next :most rows only""")
                .bind("series", series.value())
                .bind("skipped", skipped)
                .bind("most", most)));
    }

    /** How many a series has, published or not. */
    public int countIn(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from episode where series_id = :series")
                .bind("series", series.value())
                .mapTo(Integer.class)
                .one());
    }

    /** For the desk: those of a series that are not out, and so many of the latest that are; all of them by number. */
    public List<Episode> inHand(SeriesId series, int published) {
        return jdbi.withHandle(handle ->
                list(select(handle, """
                        where e.series_id = :series and (e.published_at is null or e.id in (
                            select id from episode where series_id = :series and published_at is not null
                            order by number desc fetch first :published rows only))
                        order by e.number""").bind("series", series.value()).bind("published", published)));
    }

    /** For everyone: the published ones of a series by number. */
    public List<Episode> publishedIn(SeriesId series) {
        return jdbi.withHandle(handle ->
                list(select(handle, "where e.series_id = :series and e.published_at is not null order by e.number")
                        .bind("series", series.value())));
    }

    /** The published episodes beside this one, by number. */
    public Neighbours neighbours(Episode episode) {
        return jdbi.withHandle(handle -> new Neighbours(
                beside(handle, episode, "e.number < :number", "desc"),
                beside(handle, episode, "e.number > :number", "asc")));
    }

    private static Optional<Episode> beside(Handle handle, Episode episode, String side, String order) {
        return one(select(
                        handle,
                        "where e.series_id = :series and e.published_at is not null and " + side + " order by e.number "
                                + order + " limit 1")
                .bind("series", episode.series().value())
                .bind("number", episode.number()));
    }

    /** The unpublished ones whose hour has come (at {@code now} or before), the longest due first. */
    public List<Episode> dueBefore(Instant now) {
        return jdbi.withHandle(handle -> dueBefore(handle, now));
    }

    public List<Episode> dueBefore(Handle handle, Instant now) {
        return list(select(handle, """
                        where e.published_at is null and e.scheduled_at <= :now
                        order by e.scheduled_at, e.series_id, e.number""").bind("now", now));
    }

    /** Those that wait for their hour, the next one first. */
    public List<Episode> scheduled() {
        return jdbi.withHandle(handle -> list(select(handle, """
                where e.published_at is null and e.scheduled_at is not null
                order by e.scheduled_at, e.series_id, e.number""")));
    }

    /**
     * Promises an unpublished episode for an instant; replaces an earlier promise.
     *
     * @return false where it is published already, or gone
     */
    public boolean schedule(Handle handle, EpisodeId id, EpisodeState.Scheduled promise) {
        return EpisodeChanges.schedule(handle, id, promise);
    }

    /** The episode as it is, which nobody else changes until the transaction ends. */
    public Optional<Episode> lock(Handle handle, EpisodeId id) {
        return EpisodeChanges.lock(handle, id) ? find(handle, id) : Optional.empty();
    }

    /** Takes the promise back. @return false where there was none, or where it is published already */
    public boolean unschedule(Handle handle, EpisodeId id) {
        return EpisodeChanges.unschedule(handle, id);
    }

    /**
     * Makes an episode published, once: of any number of callers, one is told true, and that one announces it.
     * From here on its number and slug stay.
     */
    public boolean markPublished(Handle handle, EpisodeId id, Instant now) {
        return EpisodeChanges.markPublished(handle, id, now);
    }

    /**
     * Makes lists show the title, level and summary of this document: of a draft while it is typed, of the revision
     * when that goes out. An unpublished episode takes its slug from the title too; a blank title changes nothing.
     */
    public void describe(Handle handle, EpisodeId id, EpisodeDocument document) {
        EpisodeChanges.describe(handle, id, document);
    }

    /** The slug that an episode has once this document is out: a published one keeps its own. */
    public static Slug slug(Episode episode, EpisodeDocument document) {
        return episode.isPublished() || document.title().isBlank()
                ? episode.slug()
                : EpisodeChanges.slug(document.title().strip());
    }

    private static Query select(Handle handle, String rest) {
        return handle.createQuery(EpisodeRow.SELECT + rest);
    }

    private static Optional<Episode> one(Query query) {
        return query.map(EpisodeRow::episode).findOne();
    }

    private static List<Episode> list(Query query) {
        return query.map(EpisodeRow::episode).list();
    }
}
