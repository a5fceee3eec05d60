package groundbass.audience.student;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.SeriesId;
import groundbass.store.RandomId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Links with which an educator shows one release to a colleague before it is out. They end by themselves. */
public final class PreviewLinks {
    /** How long a link works at most. */
    public static final Duration LONGEST = Duration.ofDays(30);

    private static final int LONGEST_READER = 200;
    private static final String SELECT =
            "select id, release_id as release, reader, created_at, expires_at from preview_link ";
    private static final String WORKING = " expires_at > :now and withdrawn_at is null ";

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;

    public PreviewLinks(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Makes a link; its token is told this once.
     *
     * @param lasting cut to {@link #LONGEST}
     */
    public SecretToken make(EducatorId who, String release, String reader, Duration lasting) {
        SecretToken token = SecretToken.next();
        Instant now = clock.instant();
        jdbi.useTransaction(handle -> {
            handle.createUpdate("""
                            insert into preview_link (id, token_hash, educator_id, release_id, reader, created_at, expires_at)
                            values (:id, :hash, :educator, :release, :reader, :now, :end)""")
                    .bind("id", RandomId.next())
                    .bind("hash", token.hash())
                    .bind("educator", who)
                    .bind("release", release)
                    .bind("reader", reader.substring(0, Math.min(reader.length(), LONGEST_READER)))
                    .bind("now", now)
                    .bind("end", now.plus(lasting.compareTo(LONGEST) > 0 ? LONGEST : lasting))
                    .execute();
            audit.append(handle, who, AuditWord.PREVIEW_SHARED, release);
        });
        return token;
    }

    /** What a token opens now. */
    public Optional<PreviewLink> find(SecretToken token) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where token_hash = :hash and" + WORKING)
                .bind("hash", token.hash())
                .bind("now", clock.instant())
                .mapTo(PreviewLink.class)
                .findOne());
    }

    /** The links to a release that work now, whoever made them, the newest first. */
    public List<PreviewLink> of(String release) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where release_id = :release and" + WORKING + "order by created_at desc, id")
                .bind("release", release)
                .bind("now", clock.instant())
                .mapTo(PreviewLink.class)
                .list());
    }

    /** Whether any link opens this release now. */
    public boolean isLinked(String release) {
        return jdbi.withHandle(handle -> handle.createQuery(
                                "select count(*) from preview_link where release_id = :release and" + WORKING)
                        .bind("release", release)
                        .bind("now", clock.instant())
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /** Ends a link to a release at once, whoever made it. */
    public void withdraw(EducatorId who, String release, String id) {
        jdbi.useTransaction(handle -> {
            int ended = handle.createUpdate("""
                            update preview_link set withdrawn_at = :now
                            where id = :id and release_id = :release and withdrawn_at is null""")
                    .bind("now", clock.instant())
                    .bind("id", id)
                    .bind("release", release)
                    .execute();
            if (ended == 1) {
                audit.append(handle, who, AuditWord.PREVIEW_WITHDRAWN, id);
            }
        });
    }

    /** Ends the links to lessons of a series that somebody made, within the caller's transaction. */
    public void withdrawAll(Handle handle, EducatorId who, SeriesId series) {
        handle.createUpdate("""
                        update preview_link set withdrawn_at = :now
                        where educator_id = :educator and withdrawn_at is null and release_id in
                            (select r.id from release r join episode e on e.id = r.episode_id
                             where e.series_id = :series)""")
                .bind("now", clock.instant())
                .bind("educator", who)
                .bind("series", series)
                .execute();
    }

    /** Deletes links that have ended by themselves. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from preview_link where expires_at <= :now")
                .bind("now", clock.instant())
                .execute());
    }
}
