package groundbass.audience;

import groundbass.audience.news.NewsReaders;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * A student leaves: the account goes, and the news that is sent to its address, both or neither. What they took stays counted
 * as it was, by nobody in particular.
 */
public final class Leaving {
    private final Jdbi jdbi;
    private final Students students;
    private final NewsReaders readers;

    public Leaving(Jdbi jdbi, Students students, NewsReaders readers) {
        this.jdbi = jdbi;
        this.students = students;
        this.readers = readers;
    }

    /** A second call finds nothing to do. */
    public void forget(StudentId id) {
        jdbi.useTransaction(handle -> leave(handle, id, students::forget));
    }

    /**
     * Ends the account of somebody who does not use it, in the same way.
     *
     * @param still asked in the transaction that ends it, after which nobody else may change the answer
     */
    void forgetUnused(StudentId id, Predicate<Handle> still) {
        jdbi.useTransaction(handle -> {
            RollUps.hold(handle); // who sums up holds this first and the student then
            if (still.test(handle)) {
                leave(handle, id, students::forgetUnused);
            }
        });
    }

    private void leave(Handle handle, StudentId id, Consumer<StudentId> account) {
        students.find(id).ifPresent(student -> readers.forget(student.email()));
        RollUps.depart(handle, id);
        account.accept(id);
    }
}
