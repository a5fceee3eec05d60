package groundbass.web.shell;

import groundbass.store.fault.Causes;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.DatabaseAway;
import groundbass.store.fault.FilesAway;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.util.Optional;

/** Tells what will be mended without us (a database that is away, a file that is being made again) from a fault. */
final class Outages {
    private static final int SECONDS_FOR_DATABASE = 10;
    private static final int SECONDS_FOR_FILE = 60;

    private Outages() {}

    /** After how many seconds to try again, if this is an outage. */
    static Optional<Integer> seconds(Throwable thrown) {
        return Causes.of(thrown).flatMap(e -> secondsOf(e).stream()).findFirst();
    }

    private static Optional<Integer> secondsOf(Throwable e) {
        if (e instanceof DamagedFileException || e instanceof NoSuchFileException || e instanceof FilesAway) {
            return Optional.of(SECONDS_FOR_FILE);
        }
        return e instanceof SQLException sql && DatabaseAway.is(sql)
                ? Optional.of(SECONDS_FOR_DATABASE)
                : Optional.empty();
    }
}
