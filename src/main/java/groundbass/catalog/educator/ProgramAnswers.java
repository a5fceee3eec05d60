package groundbass.catalog.educator;

import groundbass.identity.Sha256;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What programs were answered within the last day, by token and idempotency key (IETF draft
 * httpapi-idempotency-key-header). Of each token one request at a time is entered, so that of two with one key one is
 * the first.
 */
public final class ProgramAnswers {
    /** How long an answer is given again. */
    public static final Duration KEPT = Duration.ofDays(1);

    /** After so long a request without an answer was broken off, as when the process was killed; none takes that long. */
    static final Duration BROKEN_OFF = Duration.ofMinutes(5);

    private final Jdbi jdbi;
    private final Clock clock;

    public ProgramAnswers(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /**
     * Enters a request, where it is the first.
     *
     * @param asked of what the request says
     */
    public Repetition begin(ProgramToken token, String key, Sha256 asked) {
        return jdbi.inTransaction(handle -> {
            handle.createQuery("select id from program_token where id = :token for update")
                    .bind("token", token.id())
                    .mapTo(String.class)
                    .findOne();
            Instant now = clock.instant();
            forgetOld(handle, token, key, now);
            var known = row(handle, token, key);
            if (known.isEmpty()) {
                enter(handle, token, key, asked, now);
            }
            return known.map(row -> row.repeated(asked)).orElseGet(Repetition.First::new);
        });
    }

    private static void forgetOld(Handle handle, ProgramToken token, String key, Instant now) {
        handle.createUpdate("""
                        delete from program_answer where token_id = :token and repeat_key = :key
                          and (begun_at <= :old or status is null and begun_at <= :broken)""")
                .bind("token", token.id())
                .bind("key", key)
                .bind("old", now.minus(KEPT))
                .bind("broken", now.minus(BROKEN_OFF))
                .execute();
    }

    private static Optional<Row> row(Handle handle, ProgramToken token, String key) {
        return handle.createQuery("""
                        select asked, status, type, location, body from program_answer
                        where token_id = :token and repeat_key = :key""")
                .bind("token", token.id())
                .bind("key", key)
                .mapTo(Row.class)
                .findOne();
    }

    private static void enter(Handle handle, ProgramToken token, String key, Sha256 asked, Instant now) {
        handle.createUpdate("""
                        insert into program_answer (token_id, repeat_key, asked, begun_at)
                        values (:token, :key, :asked, :now)""")
                .bind("token", token.id())
                .bind("key", key)
                .bind("asked", asked)
                .bind("now", now)
                .execute();
    }

    /** Keeps what the first request of this key was answered. */
    public void keep(ProgramToken token, String key, ProgramAnswer answer) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        update program_answer
                        set status = :status, type = :type, location = :location, body = :body
                        where token_id = :token and repeat_key = :key""")
                .bindMethods(answer)
                .bind("token", token.id())
                .bind("key", key)
                .execute());
    }

    /** Lets the key be used anew: what was asked under it was not done. */
    public void forget(ProgramToken token, String key) {
        jdbi.useHandle(handle ->
                handle.execute("delete from program_answer where token_id = ? and repeat_key = ?", token.id(), key));
    }

    /** Deletes those that are a day old. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from program_answer where begun_at <= :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }

    private record Row(
            Sha256 asked,
            Optional<Integer> status,
            Optional<String> type,
            Optional<String> location,
            Optional<String> body) {
        Repetition repeated(Sha256 now) {
            if (!asked.equals(now)) {
                return new Repetition.Otherwise();
            }
            return status.<Repetition>map(known -> new Repetition.Answered(
                            new ProgramAnswer(known, type.orElseThrow(), location, body.orElseThrow())))
                    .orElseGet(Repetition.UnderWay::new);
        }
    }
}
