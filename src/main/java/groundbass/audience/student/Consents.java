package groundbass.audience.student;

import java.time.Clock;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Consents as they were given and withdrawn; rows are added and closed, never rewritten. */
public final class Consents {
    private final Jdbi jdbi;
    private final Clock clock;

    public Consents(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Records a consent unless this wording is agreed to already. */
    public void give(StudentId student, Purpose purpose, String wording) {
        jdbi.useTransaction(handle -> {
            if (!holds(handle, student, purpose, wording)) insert(handle, student, purpose, wording);
        });
    }

    private void insert(Handle handle, StudentId student, Purpose purpose, String wording) {
        handle.createUpdate("""
                        insert into consent (student_id, purpose, wording, given_at)
                        values (:student, :purpose, :wording, :now)""")
                .bind("student", student)
                .bind("purpose", purpose)
                .bind("wording", wording)
                .bind("now", clock.instant())
                .execute();
    }

    /** Withdraws every wording of a purpose; withdrawing is as easy as giving, and can be done twice. */
    public void withdraw(StudentId student, Purpose purpose) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        update consent set withdrawn_at = :now
                        where student_id = :student and purpose = :purpose and withdrawn_at is null""")
                .bind("now", clock.instant())
                .bind("student", student)
                .bind("purpose", purpose)
                .execute());
    }

    /** Everything a student agreed to, oldest first. */
    public List<Consent> of(StudentId student) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select purpose, wording, given_at, withdrawn_at from consent
                        where student_id = :student order by given_at, id""")
                .bind("student", student)
                .mapTo(Consent.class)
                .list());
    }

    private static boolean holds(Handle handle, StudentId student, Purpose purpose, String wording) {
        return handle.createQuery("""
                        select count(*) from consent where student_id = :student and purpose = :purpose
                            and wording = :wording and withdrawn_at is null""")
                        .bind("student", student)
                        .bind("purpose", purpose)
                        .bind("wording", wording)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }
}
