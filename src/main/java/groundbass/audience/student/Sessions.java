package groundbass.audience.student;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.ProgramTokens;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Who is signed in where. The browser carries the token, the row its hash. */
public final class Sessions {
    /** The end of a session is moved at most once in this time, so that reading a page seldom writes. */
    static final Duration SLIDES_EVERY = Duration.ofMinutes(1);

    private final Jdbi jdbi;
    private final ProgramTokens programs;
    private final Clock clock;

    public Sessions(Jdbi jdbi, ProgramTokens programs, Clock clock) {
        this.jdbi = jdbi;
        this.programs = programs;
        this.clock = clock;
    }

    /** Opens a session; always a new token, so that one planted before signing in is worth nothing. */
    public SecretToken open(Person person, Device device) {
        SecretToken token = SecretToken.next();
        Instant now = clock.instant();
        student(person).ifPresent(student -> jdbi.useHandle(handle -> IdleStudents.used(handle, student, now)));
        jdbi.useHandle(handle -> handle.createUpdate("""
                        insert into session (token_hash, student_id, educator_id, device, created_at, seen_at, expires_at)
                        values (:hash, :student, :educator, :device, :now, :now, :end)""")
                .bind("hash", token.hash())
                .bind("student", student(person))
                .bind("educator", educator(person))
                .bind("device", device)
                .bind("now", now)
                .bind("end", SessionLimits.of(person).end(now, now))
                .execute());
        return token;
    }

    /** The session a browser's token belongs to, if it has not ended; coming back moves its end. */
    public Optional<Session> find(SecretToken token) {
        Instant now = clock.instant();
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select student_id, educator_id, created_at, seen_at, expires_at from session
                        where token_hash = :hash and expires_at > :now""")
                .bind("hash", token.hash())
                .bind("now", now)
                .mapTo(Row.class)
                .findOne()
                .map(row -> slide(handle, token, row, now)));
    }

    /** Where a person is signed in, the latest seen first. */
    public List<OpenSession> of(Person person, Optional<SecretToken> here) {
        String hashHere = here.map(SecretToken::hash).orElse("");
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select token_hash, device, created_at, seen_at from session
                        where (student_id = :student or educator_id = :educator) and expires_at > :now
                        order by seen_at desc, token_hash""")
                .bind("student", student(person))
                .bind("educator", educator(person))
                .bind("now", clock.instant())
                .mapTo(OpenRow.class)
                .map(row -> row.session(hashHere))
                .list());
    }

    /** Signs a person out at one of the places of {@link #of}; returns whether there was such a place of theirs. */
    public boolean close(Person person, String number) {
        return OpenSession.isNumber(number)
                && jdbi.withHandle(handle -> handle.createUpdate("""
                        delete from session where token_hash like :number
                            and (student_id = :student or educator_id = :educator)""")
                                .bind("number", number + "%")
                                .bind("student", student(person))
                                .bind("educator", educator(person))
                                .execute())
                        > 0;
    }

    /** Signs out here. */
    public void close(SecretToken token) {
        jdbi.useHandle(handle -> handle.execute("delete from session where token_hash = ?", token.hash()));
    }

    /**
     * Signs out everywhere; the tokens of an educator's programs end, too.
     *
     * @return in how many places
     */
    public int closeAll(Person person) {
        return jdbi.inTransaction(handle -> {
            educator(person).ifPresent(programs::withdrawAll);
            return handle.createUpdate("delete from session where student_id = :student or educator_id = :educator")
                    .bind("student", student(person))
                    .bind("educator", educator(person))
                    .execute();
        });
    }

    /** Deletes the sessions that have ended. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from session where expires_at <= :now")
                .bind("now", clock.instant())
                .execute());
    }

    private static Session slide(Handle handle, SecretToken token, Row row, Instant now) {
        Session session = row.session();
        if (row.seenAt().plus(SLIDES_EVERY).isAfter(now)) return session;
        Instant end = SessionLimits.of(session.person()).end(session.createdAt(), now);
        handle.createUpdate("update session set seen_at = :now, expires_at = :end where token_hash = :hash")
                .bind("now", now)
                .bind("end", end)
                .bind("hash", token.hash())
                .execute();
        student(session.person()).ifPresent(student -> IdleStudents.used(handle, student, now));
        return new Session(session.person(), session.createdAt(), end);
    }

    private static Optional<StudentId> student(Person person) {
        return person.either(Optional::of, educator -> Optional.empty());
    }

    private static Optional<EducatorId> educator(Person person) {
        return person.either(student -> Optional.empty(), Optional::of);
    }

    private record Row(
            Optional<StudentId> studentId,
            Optional<EducatorId> educatorId,
            Instant createdAt,
            Instant seenAt,
            Instant expiresAt) {
        Session session() {
            return new Session(person(), createdAt, expiresAt);
        }

        private Person person() {
            return studentId
                    .<Person>map(Person.OfStudent::new)
                    .orElseGet(() -> new Person.OfEducator(educatorId.orElseThrow()));
        }
    }

    private record OpenRow(String tokenHash, Device device, Instant createdAt, Instant seenAt) {
        OpenSession session(String hashHere) {
            String number = tokenHash.substring(0, OpenSession.DIGITS);
            return new OpenSession(number, device, createdAt, seenAt, tokenHash.equals(hashHere));
        }
    }
}
