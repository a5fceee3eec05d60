package groundbass.web.shell;

import java.util.Optional;

/** Finds out who holds a session token. Asked at most once a request, and only where it matters. */
@FunctionalInterface
public interface PrincipalResolver {
    /** Nobody is ever signed in. */
    PrincipalResolver NONE = token -> Principal.UNKNOWN;

    /** The visitor whose cookie holds {@code token}; unknown where it is missing, wrong or out of date. */
    Principal of(Optional<String> token);
}
