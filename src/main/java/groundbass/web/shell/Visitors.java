package groundbass.web.shell;

import java.util.Optional;

/** Finds out who holds a session token. Asked at most once a request, and only where it matters. */
@FunctionalInterface
public interface Visitors {
    /** Nobody is ever signed in. */
    Visitors NONE = token -> Visitor.UNKNOWN;

    /** The visitor whose cookie holds {@code token}; unknown where it is missing, wrong or out of date. */
    Visitor of(Optional<String> token);
}
