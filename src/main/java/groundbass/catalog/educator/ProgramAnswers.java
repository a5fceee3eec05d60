package groundbass.catalog.educator;

import groundbass.identity.Sha256;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
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
            var locked = handle.createQuery("select id from program_token where id = :token for update")
                    .bind("token", token.id())
                    .mapTo(String.class)
                    .findOne();
            return locked.map(id -> begin(handle, token, key, asked)).orElseGet(Repetition.LetInNoMore::new);
        });
    }

    private Repetition begin(Handle handle, ProgramToken token, String key, Sha256 asked) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS); // as exactly as a column keeps it
        forgetOld(handle, token, key, now);
        return row(handle, token, key)
                .map(row -> row.repeated(asked))
                .orElseGet(() -> enter(handle, new Repetition.First(token.id(), key, now), asked));
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

    private static Repetition enter(Handle handle, Repetition.First first, Sha256 asked) {
        handle.createUpdate("""
                        insert into program_answer (token_id, repeat_key, asked, begun_at)
                        values (:token, :key, :asked, :begunAt)""").bindMethods(first).bind("asked", asked).execute();
        return first;
    }

    /** Keeps what the first request of this key was answered; nothing where another has taken its place since. */
    public void keep(Repetition.First first, ProgramAnswer answer) {
        jdbi.useHandle(handle ->
                handle.createUpdate("""
                        update program_answer
                        set status = :status, type = :type, location = :location, body = :body
                        where token_id = :token and repeat_key = :key and begun_at = :begunAt""").bindMethods(answer).bindMethods(first).execute());
    }

    /**
     * Lets the key be used anew: nothing of what was asked under it was done. Does nothing where another request has taken
     * its place since.
     */
    public void forget(Repetition.First first) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        delete from program_answer
                        where token_id = :token and repeat_key = :key and begun_at = :begunAt""").bindMethods(first).execute());
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
