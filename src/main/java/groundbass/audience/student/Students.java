package groundbass.audience.student;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import java.time.Clock;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Student accounts: made by the first sign-in, removed by the student, or when nobody has used them for long. */
public final class Students {
    private static final String SELECT = "select id, email, locale, created_at from student ";

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
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(Student.class)
                .findOne());
    }

    public Optional<Student> find(EmailAddress email) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where email = :email")
                .bind("email", email)
                .mapTo(Student.class)
                .findOne());
    }

    /** When the account was used last, to the minute. */
    public Optional<Instant> lastUsed(StudentId id) {
        return jdbi.withHandle(handle -> handle.createQuery("select used_at from student where id = :id")
                .bind("id", id)
                .mapTo(Instant.class)
                .findOne());
    }

    /** The language that letters and pages use for a student from now on. */
    public void speak(StudentId id, Locale locale) {
        jdbi.useHandle(handle -> handle.createUpdate("update student set locale = :locale where id = :id")
                .bind("locale", locale)
                .bind("id", id)
                .execute());
    }

    /**
     * Removes an account and everything that tells who it was: address, consents, sessions, links asked for, letters.
     * What was downloaded stays counted, by nobody in particular. A second call finds nothing to do.
     */
    public void forget(StudentId id) {
        forget(id, Audit.STUDENT, AuditWord.ACCOUNT_DELETED);
    }

    /** The same with an account that ends because nobody uses it. */
    public void forgetUnused(StudentId id) {
        forget(id, Audit.CALENDAR, AuditWord.ACCOUNT_ENDED);
    }

    private void forget(StudentId id, String who, AuditWord what) {
        jdbi.useTransaction(handle -> {
            Optional<Student> student = find(id);
            if (student.isEmpty()) return;
            EmailAddress email = student.get().email();
            outbox.forget(email);
            handle.execute("delete from sign_in where email = ?", email);
            handle.execute("delete from student where id = ?", id);
            audit.append(handle, who, what, "");
        });
    }

    /** Until the transaction ends, nobody else writes what hangs on this account. @return whether it is there */
    static boolean lock(Handle handle, StudentId id) {
        return handle.createQuery("select id from student where id = :id for update")
                .bind("id", id)
                .mapTo(StudentId.class)
                .findOne()
                .isPresent();
    }

    public Student create(Handle handle, EmailAddress email, Locale locale) {
        var student = new Student(StudentId.next(), email, locale, clock.instant());
        insert(handle, student);
        return student;
    }

    /** Enters an account as it is; {@link #create} makes one that begins now. */
    public static void insert(Handle handle, Student student) {
        handle.createUpdate("""
                        insert into student (id, email, locale, created_at, used_at)
                        values (:id, :email, :locale, :createdAt, :createdAt)""").bindMethods(student).execute();
    }
}
