package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Drafts as rows. */
final class Drafts {
    private final Jdbi jdbi;

    Drafts(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    Optional<Draft> find(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select educator_id as educator, episode_id as episode, version, document, saved_at from draft
                        where episode_id = :episode""")
                .bind("episode", episode)
                .mapTo(Draft.class)
                .findOne());
    }

    /** The first version. */
    Draft insert(Handle handle, EducatorId educator, EpisodeId episode, EpisodeDocument document, Instant now) {
        var first = new Draft(educator, episode, 1, document, Optional.of(now));
        handle.createUpdate("""
                        insert into draft (educator_id, episode_id, version, document, saved_at)
                        values (:educator, :episode, :version, :document, :savedAt)""").bindMethods(first).execute();
        return first;
    }

    /** The version after {@code before}. */
    Draft replace(Handle handle, Draft before, EducatorId by, EpisodeDocument document, Instant now) {
        var next = new Draft(by, before.episode(), before.version() + 1, document, Optional.of(now));
        handle.createUpdate("""
                        update draft set educator_id = :educator, version = :version, document = :document,
                            saved_at = :savedAt
                        where episode_id = :episode and version = :before""")
                .bindMethods(next)
                .bind("before", before.version())
                .execute();
        return next;
    }
}
