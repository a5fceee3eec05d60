package groundbass.web.shell;

import io.javalin.security.RouteRole;

/** Who may use a route. Every route names one. */
public enum Role implements RouteRole {
    ANYONE,
    STUDENT,
    EDUCATOR,
    /** Answers programs that bring a proof of their own (a signed token, RFC 8058), so no same-origin check. */
    EXEMPT
}
