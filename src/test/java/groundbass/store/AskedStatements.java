package groundbass.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.SqlLogger;
import org.jdbi.v3.core.statement.StatementContext;

/** Everything that a database is asked while something is done, as it is written with names for its values. */
public final class AskedStatements {
    private AskedStatements() {}

    public static List<String> during(Jdbi jdbi, Runnable work) {
        var statements = Collections.synchronizedList(new ArrayList<String>());
        jdbi.setSqlLogger(new SqlLogger() {
            @Override
            public void logBeforeExecution(StatementContext context) {
                statements.add(context.getRenderedSql());
            }
        });
        try {
            work.run();
        } finally {
            jdbi.setSqlLogger(SqlLogger.NOP_SQL_LOGGER);
        }
        return List.copyOf(statements);
    }
}
