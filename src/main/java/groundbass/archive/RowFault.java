package groundbass.archive;

import java.sql.SQLException;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/**
 * Why the database takes no row of an archive, where that is the archive's fault. States of SQL begin with their class
 * (ISO/IEC 9075-2, table 33).
 */
final class RowFault {
    /** A value that no such column holds: too long, or with a sign that the database does not keep. */
    private static final String DATA = "22";

    /** A row that cannot stand beside another. */
    private static final String TAKEN = "23";

    private RowFault() {}

    /**
     * What is to be told of it.
     *
     * @throws UnableToExecuteStatementException the same, where something else failed
     */
    static String key(UnableToExecuteStatementException e) {
        String state = e.getCause() instanceof SQLException cause ? String.valueOf(cause.getSQLState()) : "";
        if (state.startsWith(DATA)) {
            return "archive.problem.json";
        }
        if (state.startsWith(TAKEN)) {
            return "archive.problem.ids";
        }
        throw e;
    }
}
