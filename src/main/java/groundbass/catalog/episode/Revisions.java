package groundbass.catalog.episode;

import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import groundbass.store.DatabaseClock;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The revisions, append-only: there is no way to change or remove one. */
public final class Revisions {
    private static final String SELECT =
            "select id, episode_id as episode, number, document, note, educator_id, created_at from revision ";

    private final Jdbi jdbi;
    private final Clock clock;

    public Revisions(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    public Optional<Revision> find(RevisionId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(Revision.class)
                .findOne());
    }

    public Optional<Revision> latest(EpisodeId episode) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where episode_id = :episode order by number desc limit 1")
                        .bind("episode", episode)
                        .mapTo(Revision.class)
                        .findOne());
    }

    Optional<Revision> numbered(EpisodeId episode, int number) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where episode_id = :episode and number = :number")
                .bind("episode", episode)
                .bind("number", number)
                .mapTo(Revision.class)
                .findOne());
    }

    /** Those of an episode with numbers up to {@code highest}, newest first, so many at most. */
    List<Revision> of(EpisodeId episode, int highest, int most) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where episode_id = :episode and number <= :highest order by number desc limit :most")
                .bind("episode", episode)
                .bind("highest", highest)
                .bind("most", most)
                .mapTo(Revision.class)
                .list());
    }

    /** All of an episode, newest first. */
    public List<Revision> of(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where episode_id = :episode order by number desc")
                .bind("episode", episode)
                .mapTo(Revision.class)
                .list());
    }

    /** Appends a revision. Lists go on showing what they showed. */
    public Revision append(Handle handle, EpisodeId episode, EpisodeDocument document, EducatorId by, String note) {
        Episodes.lockRow(handle, episode); // two appends at once would take one number
        int number = latest(episode).map(Revision::number).orElse(0) + 1;
        var revision = new Revision(RevisionId.next(), episode, number, document, note, by, DatabaseClock.of(clock));
        insert(handle, revision);
        return revision;
    }

    static void insert(Handle handle, Revision revision) {
        handle.createUpdate("""
                        insert into revision
                            (id, episode_id, number, form_version, document, note, educator_id, created_at)
                        values (:id, :episode, :number, :form, :document, :note, :by, :createdAt)""")
                .bindMethods(revision)
                .bind("form", revision.document().form())
                .execute();
    }
}
