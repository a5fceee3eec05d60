package groundbass.audience.student;

import groundbass.post.Delivery;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** When accounts were used last, and who was told that theirs ends. */
public final class IdleStudents {
    private final Jdbi jdbi;

    public IdleStudents(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** A student is here: whatever they were told before does not hold any more. */
    static void used(Handle handle, StudentId student, Instant now) {
        handle.createUpdate("update student set used_at = :now, end_told_at = null where id = :student")
                .bind("now", now)
                .bind("student", student)
                .execute();
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

    /**
     * Accounts that nobody has used since a moment and whose students were told up to another; none of those whose letter
     * has not left, or lies on the desk because the site sends none.
     */
    public List<StudentId> ended(Instant unused, Instant told, int most) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select id from student
                        where used_at <= :unused and end_told_at <= :told and not exists (
                            select 1 from outbox where recipient = student.email and (delivery is null or delivery = :onDesk))
                        order by used_at, id fetch first :most rows only""")
                .bind("unused", unused)
                .bind("told", told)
                .bind("onDesk", Delivery.ON_DESK)
                .bind("most", most)
                .mapTo(StudentId.class)
                .list());
    }

    /** What was told under a rule that does not hold any more is told anew under the next. */
    public void takeBack() {
        jdbi.useHandle(handle -> handle.execute("update student set end_told_at = null where end_told_at is not null"));
    }
}
