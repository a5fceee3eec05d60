package groundbass.audience;

import groundbass.audience.news.NewsReaders;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
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
        jdbi.useTransaction(handle -> {
            students.find(id).ifPresent(student -> readers.forget(student.email()));
            RollUps.depart(handle, id);
            students.forget(id);
        });
    }
}
