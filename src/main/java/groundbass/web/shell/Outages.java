package groundbass.web.shell;

import groundbass.store.DamagedFileException;
import groundbass.store.FilesAway;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Tells what will be mended without us (a database that is away, a file that is being made again) from a fault. */
final class Outages {
    private static final int DEEPEST = 10;

    /** SQLSTATE classes: 08 connection exception (ISO/IEC 9075), 57 operator intervention (PostgreSQL, appendix A). */
    private static final Set<String> AWAY = Set.of("08", "57");

    private static final int SECONDS_FOR_DATABASE = 10;
    private static final int SECONDS_FOR_FILE = 60;

    private Outages() {}

    /** After how many seconds to try again, if this is an outage. */
    static Optional<Integer> seconds(Throwable thrown) {
        return Stream.iterate(thrown, e -> e != null, Throwable::getCause)
                .limit(DEEPEST)
                .flatMap(e -> secondsOf(e).stream())
                .findFirst();
    }

    private static Optional<Integer> secondsOf(Throwable e) {
        if (e instanceof DamagedFileException || e instanceof NoSuchFileException || e instanceof FilesAway) {
            return Optional.of(SECONDS_FOR_FILE);
        }
        return e instanceof SQLException sql && isAway(sql) ? Optional.of(SECONDS_FOR_DATABASE) : Optional.empty();
    }

    private static boolean isAway(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return e instanceof SQLTransientConnectionException
                || state.length() == 5 && AWAY.contains(state.substring(0, 2));
    }
}
