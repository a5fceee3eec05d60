package groundbass.web.shell;

import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import java.util.Objects;
import java.util.Optional;

/** Who sends a request, as far as a session tells. */
public record Principal(Optional<EducatorId> educator, Optional<StudentId> student) {
    public static final Principal UNKNOWN = new Principal(Optional.empty(), Optional.empty());

    public Principal {
        Objects.requireNonNull(educator);
        Objects.requireNonNull(student);
    }

    public static Principal of(Person person) {
        return person.either(
                student -> new Principal(Optional.empty(), Optional.of(student)),
                educator -> new Principal(Optional.of(educator), Optional.empty()));
    }

    boolean may(Role role) {
        return switch (role) {
            case ANYONE, EXEMPT -> true;
            case STUDENT -> student.isPresent();
            case EDUCATOR -> educator.isPresent();
        };
    }
}
