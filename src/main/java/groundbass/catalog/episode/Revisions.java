package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import groundbass.store.DatabaseClock;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** The revisions, append-only: there is no way to change or remove one. */
public final class Revisions {
    private static final String SELECT =
            "select id, episode_id, number, document, note, educator_id, created_at from revision ";

    private final Jdbi jdbi;
    private final Clock clock;

    public Revisions(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    public Optional<Revision> find(RevisionId id) {
        return jdbi.withHandle(handle -> find(handle, id));
    }

    public Optional<Revision> find(Handle handle, RevisionId id) {
        return handle.createQuery(SELECT + "where id = :id")
                .bind("id", id.value())
                .map(Revisions::revision)
                .findOne();
    }

    public Optional<Revision> latest(EpisodeId episode) {
        return jdbi.withHandle(handle -> latest(handle, episode));
    }

    public Optional<Revision> latest(Handle handle, EpisodeId episode) {
        return handle.createQuery(SELECT + "where episode_id = :episode order by number desc limit 1")
                .bind("episode", episode.value())
                .map(Revisions::revision)
                .findOne();
    }

    /** All of an episode, newest first. */
    public List<Revision> of(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where episode_id = :episode order by number desc")
                .bind("episode", episode.value())
                .map(Revisions::revision)
                .list());
    }

    /** Appends a revision with an id of its own. Lists go on showing what they showed. */
    public Revision append(Handle handle, EpisodeId episode, EpisodeDocument document, EducatorId by, String note) {
        return append(handle, RevisionId.next(), episode, document, by, note);
    }

    /** Appends a revision whose id is known already (an import). */
    public Revision append(
            Handle handle, RevisionId id, EpisodeId episode, EpisodeDocument document, EducatorId by, String note) {
        EpisodeChanges.lock(handle, episode); // two appends at once would take one number
        int number = latest(handle, episode).map(Revision::number).orElse(0) + 1;
        var revision = new Revision(id, episode, number, document, note, by, DatabaseClock.of(clock));
        insert(handle, revision);
        return revision;
    }

    private static void insert(Handle handle, Revision revision) {
        handle.createUpdate("""
                        insert into revision
                            (id, episode_id, number, form_version, document, note, educator_id, created_at)
                        values (:id, :episode, :number, :form, :document, :note, :by, :at)""")
                .bind("id", revision.id().value())
                .bind("episode", revision.episode().value())
                .bind("number", revision.number())
                .bind("form", revision.document().form())
                .bind("document", DocumentJson.write(revision.document()))
                .bind("note", revision.note())
                .bind("by", revision.by().value())
                .bind("at", revision.createdAt())
                .execute();
    }

    private static Revision revision(ResultSet row, StatementContext context) throws SQLException {
        return new Revision(
                new RevisionId(row.getString("id")),
                new EpisodeId(row.getString("episode_id")),
                row.getInt("number"),
                DocumentJson.read(row.getString("document")),
                row.getString("note"),
                new EducatorId(row.getString("educator_id")),
                Instants.from(row, "created_at"));
    }
}
