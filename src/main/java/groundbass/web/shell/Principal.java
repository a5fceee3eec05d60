package groundbass.web.shell;

import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import java.util.Objects;
import java.util.Optional;

/** Who sends a request, as far as a session tells. */
public record Principal(Optional<AtDesk> desk, Optional<StudentId> student) {
    public static final Principal UNKNOWN = new Principal(Optional.empty(), Optional.empty());

    public Principal {
        Objects.requireNonNull(desk);
        Objects.requireNonNull(student);
    }

    /** An educator whose desk is open, and what they are to the site. */
    public record AtDesk(EducatorId id, SiteStanding standing) {
        public AtDesk {
            Objects.requireNonNull(id);
            Objects.requireNonNull(standing);
        }
    }

    public static Principal of(StudentId student) {
        return new Principal(Optional.empty(), Optional.of(student));
    }

    public static Principal of(EducatorId educator, SiteStanding standing) {
        return new Principal(Optional.of(new AtDesk(educator, standing)), Optional.empty());
    }

    public Optional<EducatorId> educator() {
        return desk.map(AtDesk::id);
    }

    boolean may(Role role) {
        return switch (role) {
            case ANYONE, EXEMPT -> true;
            case STUDENT -> student.isPresent();
            case EDUCATOR -> desk.isPresent();
            case TEACHER -> desk.filter(one -> one.standing().mayBegin()).isPresent();
            case OWNER -> desk.filter(one -> one.standing().keepsSite()).isPresent();
        };
    }
}
