package groundbass.catalog.series;

import groundbass.catalog.educator.EducatorId;
import groundbass.identity.Slug;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Series as rows. */
public final class SeriesRepository {
    private static final String SELECT =
            "select s.id, s.educator_id, s.slug, s.title, s.summary, s.zone, s.created_at from series s ";

    public Optional<Series> find(Handle handle, SeriesId id) {
        return handle.createQuery(SELECT + "where s.id = :id")
                .bind("id", id.value())
                .map(SeriesRepository::series)
                .findOne();
    }

    Optional<Series> find(Handle handle, Slug slug) {
        return handle.createQuery(SELECT + "where s.slug = :slug")
                .bind("slug", slug.value())
                .map(SeriesRepository::series)
                .findOne();
    }

    List<Series> ownedBy(Handle handle, EducatorId owner) {
        return handle.createQuery(SELECT + "where s.educator_id = :owner order by s.created_at, s.id")
                .bind("owner", owner.value())
                .map(SeriesRepository::series)
                .list();
    }

    /** Those with something published, the one with the latest publication first. */
    List<Series> published(Handle handle) {
        return handle.createQuery(SELECT + """
                                join (select series_id, max(published_at) as latest from episode
                                      where published_at is not null group by series_id) e on e.series_id = s.id
                                order by e.latest desc, s.id""").map(SeriesRepository::series).list();
    }

    boolean hasPublished(Handle handle, SeriesId id) {
        return handle.createQuery("select count(*) from episode where series_id = :id and published_at is not null")
                        .bind("id", id.value())
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    /** Until the transaction ends, nobody else numbers episodes of this series or renames it. */
    public boolean lock(Handle handle, SeriesId id) {
        return handle.createQuery("select id from series where id = :id for update")
                .bind("id", id.value())
                .mapTo(String.class)
                .findOne()
                .isPresent();
    }

    /** Until the transaction ends, nobody else takes a slug. */
    void lockSlugs(Handle handle) {
        handle.createQuery("select id from educator order by id for update")
                .mapTo(String.class)
                .list();
    }

    void insert(Handle handle, Series series) {
        handle.createUpdate("""
                        insert into series (id, educator_id, slug, title, summary, zone, created_at)
                        values (:id, :owner, :slug, :title, :summary, :zone, :at)""")
                .bind("id", series.id().value())
                .bind("owner", series.owner().value())
                .bind("slug", series.slug().value())
                .bind("title", series.title())
                .bind("summary", series.summary())
                .bind("zone", series.zone().getId())
                .bind("at", series.createdAt())
                .execute();
    }

    void update(Handle handle, Series series) {
        handle.createUpdate("""
                        update series set slug = :slug, title = :title, summary = :summary, zone = :zone
                        where id = :id""")
                .bind("id", series.id().value())
                .bind("slug", series.slug().value())
                .bind("title", series.title())
                .bind("summary", series.summary())
                .bind("zone", series.zone().getId())
                .execute();
    }

    private static Series series(ResultSet row, StatementContext context) throws SQLException {
        return new Series(
                new SeriesId(row.getString("id")),
                new EducatorId(row.getString("educator_id")),
                new Slug(row.getString("slug")),
                row.getString("title"),
                row.getString("summary"),
                ZoneId.of(row.getString("zone")),
                Instants.from(row, "created_at"));
    }
}
