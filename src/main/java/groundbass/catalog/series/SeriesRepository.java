package groundbass.catalog.series;

import groundbass.catalog.educator.EducatorId;
import groundbass.identity.Slug;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Series as rows. */
final class SeriesRepository {
    private static final String SELECT =
            "select s.id, s.educator_id as owner, s.slug, s.title, s.summary, s.zone, s.created_at from series s ";

    private final Jdbi jdbi;

    SeriesRepository(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    Optional<Series> find(SeriesId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where s.id = :id")
                .bind("id", id)
                .mapTo(Series.class)
                .findOne());
    }

    Optional<Series> find(Slug slug) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where s.slug = :slug")
                .bind("slug", slug)
                .mapTo(Series.class)
                .findOne());
    }

    List<Series> all(EducatorId who, Deed deed) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where s.id in " + deed.series() + "order by s.created_at, s.id")
                        .bind("who", who)
                        .mapTo(Series.class)
                        .list());
    }

    Optional<Series> find(EducatorId who, Deed deed, SeriesId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where s.id = :id and s.id in " + deed.series())
                .bind("who", who)
                .bind("id", id)
                .mapTo(Series.class)
                .findOne());
    }

    Optional<SeriesPart> part(EducatorId who, SeriesId id) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select 'owner' from series where id = :id and educator_id = :who
                        union select part from series_colleague where series_id = :id and educator_id = :who""")
                .bind("who", who)
                .bind("id", id)
                .mapTo(String.class)
                .findOne()
                .flatMap(SeriesPart::parse));
    }

    /** Those with something published, the one with the latest publication first. */
    List<Series> published() {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + """
                        join (select series_id, max(published_at) as latest from episode
                              where published_at is not null and withdrawn_at is null
                              group by series_id) e on e.series_id = s.id
                        order by e.latest desc, s.id""").mapTo(Series.class).list());
    }

    /** Whether anything of it ever was out. */
    boolean hasPublished(SeriesId id) {
        return has(id, "published_at is not null");
    }

    /** Whether students can have anything of it now. */
    boolean isOut(SeriesId id) {
        return has(id, "published_at is not null and withdrawn_at is null");
    }

    private boolean has(SeriesId id, String lessons) {
        return jdbi.withHandle(handle -> handle.createQuery(
                                "select count(*) from episode where series_id = :id and " + lessons)
                        .bind("id", id)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    boolean lock(Handle handle, SeriesId id) {
        return SeriesRows.lock(handle, id);
    }

    /** Until the transaction ends, nobody else takes a slug. */
    void lockSlugs(Handle handle) {
        handle.createQuery("select id from educator order by id for update")
                .mapTo(EducatorId.class)
                .list();
    }

    void insert(Handle handle, Series series) {
        handle.createUpdate("""
                        insert into series (id, educator_id, slug, title, summary, zone, created_at)
                        values (:id, :owner, :slug, :title, :summary, :zone, :createdAt)""").bindMethods(series).execute();
    }

    void update(Handle handle, Series series) {
        handle.createUpdate("""
                        update series set slug = :slug, title = :title, summary = :summary, zone = :zone
                        where id = :id""").bindMethods(series).execute();
    }
}
