package groundbass.web.shell;

import java.util.Objects;
import java.util.Optional;

/** Who sends a request, as far as a session tells. One person may be signed in as both. */
public record Visitor(Optional<String> educator, Optional<String> student) {
    public static final Visitor UNKNOWN = new Visitor(Optional.empty(), Optional.empty());

    public Visitor {
        Objects.requireNonNull(educator);
        Objects.requireNonNull(student);
    }

    boolean may(Role role) {
        return switch (role) {
            case ANYONE, EXEMPT -> true;
            case STUDENT -> student.isPresent();
            case EDUCATOR -> educator.isPresent();
        };
    }
}
