package groundbass.store.fault;

import java.sql.SQLException;
import org.jdbi.v3.core.JdbiException;

/** That a row was not written because one of the same key is there: somebody else was faster. */
public final class UniqueViolation {
    /** SQLSTATE of H2 and PostgreSQL alike (ISO/IEC 9075 class 23). */
    private static final String STATE = "23505";

    private UniqueViolation() {}

    /** Whether that is what went wrong, and nothing else. */
    public static boolean is(JdbiException e) {
        return e.getCause() instanceof SQLException cause && STATE.equals(cause.getSQLState());
    }
}
