package groundbass.store.fault;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Set;

/** Tells a database that cannot work for now from a statement or a database that is wrong. */
public final class DatabaseAway {
    /**
     * Classes of SQLSTATE: 08 connection exception (ISO/IEC 9075), 53 insufficient resources, 55 object not in prerequisite
     * state, such as a lock that cannot be had, and 57 operator intervention (PostgreSQL's manual, appendix A).
     */
    private static final Set<String> CLASSES = Set.of("08", "53", "55", "57");

    private static final int LENGTH = 5;

    private DatabaseAway() {}

    /** Whether that is what something was thrown for. */
    public static boolean causes(Throwable thrown) {
        return Causes.of(thrown).anyMatch(e -> e instanceof SQLException sql && is(sql));
    }

    public static boolean is(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return e instanceof SQLTransientConnectionException
                || state.length() == LENGTH && CLASSES.contains(state.substring(0, 2));
    }
}
