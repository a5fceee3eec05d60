package groundbass.web.shell;

import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import java.util.Objects;
import java.util.Optional;

/**
 * Who sends a request, as far as a session tells.
 *
 * @param lackingFactor whose desk opens only when they have set up the second factor that the site demands; until then they
 *                      are nobody but to the page that does it
 */
public record Principal(Optional<AtDesk> desk, Optional<StudentId> student, Optional<EducatorId> lackingFactor) {
    public static final Principal UNKNOWN = new Principal(Optional.empty(), Optional.empty(), Optional.empty());

    public Principal {
        Objects.requireNonNull(desk);
        Objects.requireNonNull(student);
        Objects.requireNonNull(lackingFactor);
    }

    /** An educator whose desk is open, and what they are to the site. */
    public record AtDesk(EducatorId id, SiteStanding standing) {
        public AtDesk {
            Objects.requireNonNull(id);
            Objects.requireNonNull(standing);
        }
    }

    public static Principal of(StudentId student) {
        return new Principal(Optional.empty(), Optional.of(student), Optional.empty());
    }

    public static Principal of(EducatorId educator, SiteStanding standing) {
        return new Principal(Optional.of(new AtDesk(educator, standing)), Optional.empty(), Optional.empty());
    }

    public static Principal lackingFactor(EducatorId educator) {
        return new Principal(Optional.empty(), Optional.empty(), Optional.of(educator));
    }

    /** Whether neither a desk nor a student's account is open to them. */
    public boolean isNobody() {
        return desk.isEmpty() && student.isEmpty();
    }

    public Optional<EducatorId> educator() {
        return desk.map(AtDesk::id);
    }

    boolean may(Role role) {
        return switch (role) {
            case ANYONE, EXEMPT -> true;
            case STUDENT -> student.isPresent();
            case ENTERED -> desk.isPresent() || lackingFactor.isPresent();
            case EDUCATOR -> desk.isPresent();
            case TEACHER -> desk.filter(one -> one.standing().mayBegin()).isPresent();
            case OWNER -> desk.filter(one -> one.standing().keepsSite()).isPresent();
        };
    }
}
