package groundbass.catalog.episode;

import groundbass.catalog.series.SeriesId;
import groundbass.document.Level;
import groundbass.identity.Slug;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.jdbi.v3.core.statement.StatementContext;

/** How an episode is read from its row. */
final class EpisodeRow {
    /** All columns, of a table that is called e. */
    static final String SELECT = """
            select e.id, e.series_id, e.number, e.slug, e.title, e.level, e.summary, e.scheduled_at,
                   e.scheduled_zone, e.scheduled_local, e.promised_at, e.promised_release, e.published_at, e.created_at
            from episode e\s""";

    private EpisodeRow() {}

    static Episode episode(ResultSet row, StatementContext context) throws SQLException {
        return new Episode(
                new EpisodeId(row.getString("id")),
                new SeriesId(row.getString("series_id")),
                row.getInt("number"),
                new Slug(row.getString("slug")),
                row.getString("title"),
                level(row.getString("level")),
                row.getString("summary"),
                state(row),
                Instants.from(row, "created_at"));
    }

    private static Level level(String code) throws SQLException {
        return Level.parse(code).orElseThrow(() -> new SQLException("unknown level: " + code));
    }

    private static EpisodeState state(ResultSet row) throws SQLException {
        var published = Instants.ifPresent(row, "published_at");
        if (published.isPresent()) {
            return new EpisodeState.Published(published.get());
        }
        var scheduled = Instants.ifPresent(row, "scheduled_at");
        return scheduled.isEmpty()
                ? new EpisodeState.Unscheduled()
                : new EpisodeState.Scheduled(
                        scheduled.get(),
                        ZoneId.of(row.getString("scheduled_zone")),
                        LocalDateTime.parse(row.getString("scheduled_local")),
                        Instants.ifPresent(row, "promised_at").orElse(Instant.EPOCH), // older promises do not say
                        Math.max(1, row.getInt("promised_release")));
    }
}
