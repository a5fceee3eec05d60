package groundbass.audience.student;

import groundbass.post.Delivery;
import groundbass.post.MessageId;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** When accounts were used last, who was told that theirs ends, and whether that letter left. */
public final class IdleStudents {
    private static final String TAKE_BACK =
            "update student set end_told_at = null, end_letter = null, end_sent_at = null where end_told_at is not null ";

    private final Jdbi jdbi;

    public IdleStudents(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** A student is here: whatever they were told before does not hold any more. */
    static void used(Handle handle, StudentId student, Instant now) {
        handle.createUpdate("""
                        update student set used_at = :now, end_told_at = null, end_letter = null, end_sent_at = null
                        where id = :student""").bind("now", now).bind("student", student).execute();
    }

    /** Accounts that nobody has used since a moment and whose students know nothing yet, so many at most. */
    public List<Student> untold(Instant unused, int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select id, email, locale, created_at from student
                        where used_at <= :unused and end_told_at is null order by used_at, id fetch first :most rows only""")
                .bind("unused", unused)
                .bind("most", most)
                .mapTo(Student.class)
                .list());
    }

    /** Notes that a student is told; false where they have come back or were told meanwhile. In a transaction. */
    public static boolean tell(Handle handle, StudentId student, Instant unused, Instant now) {
        return handle.createUpdate("""
                        update student set end_told_at = :now
                        where id = :student and used_at <= :unused and end_told_at is null""")
                        .bind("now", now)
                        .bind("student", student)
                        .bind("unused", unused)
                        .execute()
                == 1;
    }

    /** Notes by which letter a student is told; in the transaction of {@link #tell}. */
    public static void toldBy(Handle handle, StudentId student, MessageId letter) {
        handle.createUpdate("update student set end_letter = :letter where id = :student")
                .bind("letter", letter)
                .bind("student", student)
                .execute();
    }

    /** Notes of which letters a mail server has taken that they left: the outbox does not keep them for long. */
    public void noteSent(Instant now) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        update student set end_sent_at = :now
                        where end_letter is not null and end_sent_at is null
                            and exists (select 1 from outbox where id = student.end_letter and delivery = :sent)""")
                .bind("now", now)
                .bind("sent", Delivery.SENT)
                .execute());
    }

    /** Accounts that nobody has used since a moment and whose students' letters were seen to have left up to another. */
    public List<StudentId> ended(Instant unused, Instant sent, int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select id from student where used_at <= :unused and end_sent_at <= :sent
                        order by used_at, id fetch first :most rows only""")
                .bind("unused", unused)
                .bind("sent", sent)
                .bind("most", most)
                .mapTo(StudentId.class)
                .list());
    }

    /** Whether an account is one of {@link #ended}; until the transaction ends it stays so, since nobody else writes it. */
    public static boolean hasEnded(Handle handle, StudentId student, Instant unused, Instant sent) {
        return handle.createQuery("""
                        select id from student
                        where id = :student and used_at <= :unused and end_sent_at <= :sent for update""")
                .bind("student", student)
                .bind("unused", unused)
                .bind("sent", sent)
                .mapTo(StudentId.class)
                .findOne()
                .isPresent();
    }

    /** What was told under a rule that does not hold any more is told anew under the next. */
    public void takeBack() {
        jdbi.useHandle(handle -> handle.execute(TAKE_BACK));
    }

    /** Takes back what was told to those who have used their accounts since a moment, or were told under a shorter rule. */
    public void takeBackFromUsers(Instant since) {
        jdbi.useHandle(handle -> handle.createUpdate(TAKE_BACK + "and used_at > :since")
                .bind("since", since)
                .execute());
    }

    /**
     * Takes back what was told up to a moment by letters that have not left and wait no longer: they were given up or
     * refused, or lay on the desk because the site sends none.
     */
    public void takeBackUnsent(Instant told) {
        jdbi.useHandle(handle ->
                handle.createUpdate(TAKE_BACK + """
                        and end_told_at <= :told and end_sent_at is null
                        and not exists (select 1 from outbox where id = student.end_letter and delivery is null)""").bind("told", told).execute());
    }
}
