package groundbass.audience.student;

import groundbass.catalog.educator.Audit;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** Student accounts: made by the first sign-in, removed by the student. */
public final class Students {
    private final Jdbi jdbi;
    private final Outbox outbox;
    private final Audit audit;
    private final Clock clock;

    public Students(Jdbi jdbi, Outbox outbox, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.outbox = outbox;
        this.audit = audit;
        this.clock = clock;
    }

    public Optional<Student> find(StudentId id) {
        return jdbi.withHandle(handle -> find(handle, id));
    }

    public Optional<Student> find(EmailAddress email) {
        return jdbi.withHandle(handle -> find(handle, email));
    }

    /** The language that letters and pages use for a student from now on. */
    public void speak(StudentId id, Locale locale) {
        jdbi.useHandle(handle -> handle.createUpdate("update student set locale = :locale where id = :id")
                .bind("locale", locale.toLanguageTag())
                .bind("id", id.value())
                .execute());
    }

    /**
     * Removes an account and everything that tells who it was: address, consents, sessions, links asked for, letters.
     * What was downloaded stays counted, by nobody in particular. A second call finds nothing to do.
     */
    public void forget(StudentId id) {
        jdbi.useTransaction(handle -> {
            Optional<Student> student = find(handle, id);
            if (student.isEmpty()) return;
            EmailAddress email = student.get().email();
            outbox.forget(handle, email);
            handle.execute("delete from sign_in where email = ?", email.value());
            handle.execute("delete from student where id = ?", id.value());
            audit.append(handle, Audit.STUDENT, "account deleted", "");
        });
    }

    Optional<Student> find(Handle handle, EmailAddress email) {
        return handle.createQuery("select * from student where email = :email")
                .bind("email", email.value())
                .map(Students::student)
                .findOne();
    }

    public Student create(Handle handle, EmailAddress email, Locale locale) {
        var student = new Student(StudentId.next(), email, locale, clock.instant());
        insert(handle, student);
        return student;
    }

    /** Enters an account as it is; {@link #create} makes one that begins now. */
    public static void insert(Handle handle, Student student) {
        handle.createUpdate("""
                        insert into student (id, email, locale, created_at) values (:id, :email, :locale, :at)""")
                .bind("id", student.id().value())
                .bind("email", student.email().value())
                .bind("locale", student.locale().toLanguageTag())
                .bind("at", Instants.toColumn(student.createdAt()))
                .execute();
    }

    private static Optional<Student> find(Handle handle, StudentId id) {
        return handle.createQuery("select * from student where id = :id")
                .bind("id", id.value())
                .map(Students::student)
                .findOne();
    }

    public static Student student(ResultSet row, StatementContext context) throws SQLException {
        return new Student(
                new StudentId(row.getString("id")),
                new EmailAddress(row.getString("email")),
                Locale.forLanguageTag(row.getString("locale")),
                Instants.from(row, "created_at"));
    }
}
