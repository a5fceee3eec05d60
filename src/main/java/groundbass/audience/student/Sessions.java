package groundbass.audience.student;

import groundbass.catalog.educator.EducatorId;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** Who is signed in where. The browser carries the token, the row its hash. */
public final class Sessions {
    /** The end of a session is moved at most once in this time, so that reading a page seldom writes. */
    static final Duration SLIDES_EVERY = Duration.ofMinutes(1);

    private final Jdbi jdbi;
    private final Clock clock;

    public Sessions(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    public Token open(Person person, Device device) {
        return jdbi.inTransaction(handle -> open(handle, person, device));
    }

    /** Opens a session; always a new token, so that one planted before signing in is worth nothing. */
    public Token open(Handle handle, Person person, Device device) {
        Token token = Token.next();
        Instant now = clock.instant();
        handle.createUpdate("""
                        insert into session (token_hash, student_id, educator_id, device, created_at, seen_at, expires_at)
                        values (:hash, :student, :educator, :device, :now, :now, :end)""")
                .bind("hash", token.hash())
                .bind("student", studentColumn(person))
                .bind("educator", educatorColumn(person))
                .bind("device", device.column())
                .bind("now", Instants.toColumn(now))
                .bind("end", Instants.toColumn(SessionLimits.of(person).end(now, now)))
                .execute();
        return token;
    }

    /** The session a browser's token belongs to, if it has not ended; coming back moves its end. */
    public Optional<Session> find(Token token) {
        Instant now = clock.instant();
        return jdbi.withHandle(
                handle -> handle.createQuery("select * from session where token_hash = :hash and expires_at > :now")
                        .bind("hash", token.hash())
                        .bind("now", Instants.toColumn(now))
                        .map(Row::of)
                        .findOne()
                        .map(row -> slide(handle, token, row, now)));
    }

    /** Where a person is signed in, the latest seen first. */
    public List<OpenSession> of(Person person, Optional<Token> here) {
        String hashHere = here.map(Token::hash).orElse("");
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select token_hash, device, created_at, seen_at from session
                        where (student_id = :student or educator_id = :educator) and expires_at > :now
                        order by seen_at desc, token_hash""")
                .bind("student", studentColumn(person))
                .bind("educator", educatorColumn(person))
                .bind("now", Instants.toColumn(clock.instant()))
                .map((row, context) -> OpenSession.of(row, hashHere))
                .list());
    }

    /** Signs a person out at one of the places of {@link #of}; returns whether there was such a place of theirs. */
    public boolean close(Person person, String number) {
        return OpenSession.isNumber(number)
                && jdbi.withHandle(handle -> handle.createUpdate("""
                        delete from session where token_hash like :number
                            and (student_id = :student or educator_id = :educator)""")
                                .bind("number", number + "%")
                                .bind("student", studentColumn(person))
                                .bind("educator", educatorColumn(person))
                                .execute())
                        > 0;
    }

    /** Signs out here. */
    public void close(Token token) {
        jdbi.useHandle(handle -> handle.execute("delete from session where token_hash = ?", token.hash()));
    }

    /** Signs out everywhere. */
    public int closeAll(Person person) {
        return jdbi.withHandle(handle -> closeAll(handle, person));
    }

    /** Signs out everywhere, in the transaction that (say) changes a password. */
    public int closeAll(Handle handle, Person person) {
        return handle.createUpdate("delete from session where student_id = :student or educator_id = :educator")
                .bind("student", studentColumn(person))
                .bind("educator", educatorColumn(person))
                .execute();
    }

    /** Deletes the sessions that have ended. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from session where expires_at <= :now")
                .bind("now", Instants.toColumn(clock.instant()))
                .execute());
    }

    private static Session slide(Handle handle, Token token, Row row, Instant now) {
        Session session = row.session();
        if (row.seenAt().plus(SLIDES_EVERY).isAfter(now)) return session;
        Instant end = SessionLimits.of(session.person()).end(session.createdAt(), now);
        handle.createUpdate("update session set seen_at = :now, expires_at = :end where token_hash = :hash")
                .bind("now", Instants.toColumn(now))
                .bind("end", Instants.toColumn(end))
                .bind("hash", token.hash())
                .execute();
        return new Session(session.person(), session.createdAt(), end);
    }

    private static String studentColumn(Person person) {
        return person.either(StudentId::value, educator -> null);
    }

    private static String educatorColumn(Person person) {
        return person.either(student -> null, EducatorId::value);
    }

    private record Row(Session session, Instant seenAt) {
        static Row of(ResultSet row, StatementContext context) throws SQLException {
            var session = new Session(person(row), Instants.from(row, "created_at"), Instants.from(row, "expires_at"));
            return new Row(session, Instants.from(row, "seen_at"));
        }

        private static Person person(ResultSet row) throws SQLException {
            String student = row.getString("student_id");
            if (student != null) return new Person.OfStudent(new StudentId(student));
            return new Person.OfEducator(new EducatorId(row.getString("educator_id")));
        }
    }
}
