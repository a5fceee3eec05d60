package groundbass.catalog.educator;

import groundbass.catalog.FieldChecks;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.store.RandomId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The tokens of programs that work for educators: made and withdrawn at the desk, told once, kept as hashes. They end by
 * themselves, and all at once with the sessions of their educator.
 */
public final class ProgramTokens {
    /** The most that one educator has at a time. */
    public static final int MOST = 20;

    /** How many days a token can be good for. */
    public static final List<Integer> DAYS = List.of(30, 90, 365);

    /** When it was last used is noted at most once in this time, so that reading seldom writes. */
    static final Duration NOTED_EVERY = Duration.ofMinutes(1);

    /** So long one that has run out still stands in the list. */
    private static final Duration KEPT = Duration.ofDays(30);

    private static final int LONGEST_NAME = 100;
    private static final String SELECT =
            "select id, educator_id as educator, name, scopes, created_at, used_at, expires_at from program_token ";

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;

    public ProgramTokens(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Makes a token; its secret is told this once.
     *
     * @param days one of {@link #DAYS}
     */
    public Outcome<ProgramSecret> make(EducatorId who, String name, Set<ProgramScope> scopes, int days) {
        var problems = new ArrayList<>(FieldChecks.line("name", name, LONGEST_NAME));
        if (scopes.isEmpty()) {
            problems.add(FieldProblem.of("scopes", "catalog.problem.scopes"));
        }
        if (!DAYS.contains(days)) {
            problems.add(FieldProblem.of("days", "catalog.problem.days"));
        }
        return problems.isEmpty()
                ? jdbi.inTransaction(handle -> make(handle, who, name.strip(), scopes, Duration.ofDays(days)))
                : Outcome.refused(problems);
    }

    private Outcome<ProgramSecret> make(
            Handle handle, EducatorId who, String name, Set<ProgramScope> scopes, Duration lasting) {
        // or two windows both find room for one more
        handle.createQuery("select id from educator where id = :educator for update")
                .bind("educator", who)
                .mapTo(EducatorId.class)
                .findOne();
        if (of(who).size() >= MOST) {
            return Outcome.refused("name", "catalog.problem.tokens", MOST);
        }
        var secret = ProgramSecret.next();
        Instant now = clock.instant();
        handle.createUpdate("""
                        insert into program_token (id, token_hash, educator_id, name, scopes, created_at, expires_at)
                        values (:id, :hash, :educator, :name, :scopes, :now, :end)""")
                .bind("id", RandomId.next())
                .bind("hash", secret.hash())
                .bind("educator", who)
                .bind("name", name)
                .bind("scopes", words(scopes))
                .bind("now", now)
                .bind("end", now.plus(lasting))
                .execute();
        audit.append(handle, who, AuditWord.TOKEN_CREATED, name);
        return Outcome.done(secret);
    }

    private static String words(Set<ProgramScope> scopes) {
        return scopes.stream().sorted().map(ProgramScope::word).collect(Collectors.joining(" "));
    }

    /** The token whose secret a program has sent, while it is good; notes that it was used. */
    public Optional<ProgramToken> find(ProgramSecret secret) {
        Instant now = clock.instant();
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where token_hash = :hash and expires_at > :now")
                .bind("hash", secret.hash())
                .bind("now", now)
                .mapTo(Row.class)
                .findOne()
                .map(row -> used(handle, row.token(), now)));
    }

    private static ProgramToken used(Handle handle, ProgramToken token, Instant now) {
        boolean noted =
                token.usedAt().filter(at -> at.plus(NOTED_EVERY).isAfter(now)).isPresent();
        if (!noted) {
            handle.createUpdate("update program_token set used_at = :now where id = :id")
                    .bind("now", now)
                    .bind("id", token.id())
                    .execute();
        }
        return token;
    }

    /** All of an educator's, also those that have run out of late; the newest first. */
    public List<ProgramToken> of(EducatorId who) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where educator_id = :educator order by created_at desc, id")
                        .bind("educator", who)
                        .mapTo(Row.class)
                        .map(Row::token)
                        .list());
    }

    /** Ends a token of this educator's at once; does nothing where there is none of that id. */
    public void withdraw(EducatorId who, String id) {
        jdbi.useTransaction(handle -> of(who).stream()
                .filter(token -> token.id().equals(id))
                .findFirst()
                .ifPresent(token -> withdraw(handle, token)));
    }

    /**
     * Ends all tokens of an educator: whoever signs out everywhere leaves nothing open. The entry that tells of that end
     * tells of this one.
     */
    public void withdrawAll(EducatorId who) {
        jdbi.useHandle(handle -> handle.execute("delete from program_token where educator_id = ?", who));
    }

    private void withdraw(Handle handle, ProgramToken token) {
        int ended = handle.createUpdate("delete from program_token where id = :id")
                .bind("id", token.id())
                .execute();
        if (ended == 1) {
            audit.append(handle, token.educator(), AuditWord.TOKEN_WITHDRAWN, token.name());
        }
    }

    /** Deletes tokens that have run out a while ago. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from program_token where expires_at <= :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }

    private record Row(
            String id,
            EducatorId educator,
            String name,
            String scopes,
            Instant createdAt,
            Optional<Instant> usedAt,
            Instant expiresAt) {
        ProgramToken token() {
            var read = Stream.of(scopes.split(" "))
                    .flatMap(word -> ProgramScope.parse(word).stream())
                    .collect(Collectors.toSet());
            return new ProgramToken(id, educator, name, read, createdAt, usedAt, expiresAt);
        }
    }
}
