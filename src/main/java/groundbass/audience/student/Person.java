package groundbass.audience.student;

import groundbass.catalog.educator.EducatorId;
import java.util.function.Function;

/** Who is signed in. */
public sealed interface Person {
    /** Asks what to do for either kind. */
    <T> T either(Function<StudentId, T> student, Function<EducatorId, T> educator);

    record OfStudent(StudentId id) implements Person {
        @Override
        public <T> T either(Function<StudentId, T> student, Function<EducatorId, T> educator) {
            return student.apply(id);
        }
    }

    record OfEducator(EducatorId id) implements Person {
        @Override
        public <T> T either(Function<StudentId, T> student, Function<EducatorId, T> educator) {
            return educator.apply(id);
        }
    }
}
