package groundbass.web.shell;

import io.javalin.security.RouteRole;

/** Who may use a route. Every route names one. */
public enum Role implements RouteRole {
    ANYONE,
    STUDENT,
    /** Everybody with a desk, also who has to set up a second factor before it opens. */
    ENTERED,
    /** Everybody with a desk; what of it is theirs, its pages ask. */
    EDUCATOR,
    /** Those who begin series of their own. */
    TEACHER,
    /** Who keeps the site. */
    OWNER,
    /** Answers programs that bring a proof of their own (a signed token, RFC 8058), so no same-origin check. */
    EXEMPT
}
