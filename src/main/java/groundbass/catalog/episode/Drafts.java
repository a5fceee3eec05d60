package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Drafts as rows. */
final class Drafts {
    Optional<Draft> find(Handle handle, EducatorId educator, EpisodeId episode) {
        return handle.createQuery("""
                        select educator_id, episode_id, version, document, saved_at from draft
                        where educator_id = :educator and episode_id = :episode""")
                .bind("educator", educator.value())
                .bind("episode", episode.value())
                .map(Drafts::draft)
                .findOne();
    }

    /** The first version. */
    Draft insert(Handle handle, EducatorId educator, EpisodeId episode, EpisodeDocument document, Instant now) {
        handle.createUpdate("""
                        insert into draft (educator_id, episode_id, version, document, saved_at)
                        values (:educator, :episode, 1, :document, :at)""")
                .bind("educator", educator.value())
                .bind("episode", episode.value())
                .bind("document", DocumentJson.write(document))
                .bind("at", now)
                .execute();
        return new Draft(educator, episode, 1, document, Optional.of(now));
    }

    /** The version after {@code before}. */
    Draft replace(Handle handle, Draft before, EpisodeDocument document, Instant now) {
        handle.createUpdate("""
                        update draft set version = version + 1, document = :document, saved_at = :at
                        where educator_id = :educator and episode_id = :episode and version = :version""")
                .bind("educator", before.educator().value())
                .bind("episode", before.episode().value())
                .bind("version", before.version())
                .bind("document", DocumentJson.write(document))
                .bind("at", now)
                .execute();
        return new Draft(before.educator(), before.episode(), before.version() + 1, document, Optional.of(now));
    }

    private static Draft draft(ResultSet row, StatementContext context) throws SQLException {
        return new Draft(
                new EducatorId(row.getString("educator_id")),
                new EpisodeId(row.getString("episode_id")),
                row.getInt("version"),
                DocumentJson.read(row.getString("document")),
                Optional.of(Instants.from(row, "saved_at")));
    }
}
