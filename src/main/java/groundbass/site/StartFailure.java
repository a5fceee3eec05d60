package groundbass.site;

import groundbass.store.CannotOpen;
import groundbass.store.Database;
import groundbass.store.fault.Causes;
import groundbass.store.fault.FolderFault;
import java.net.BindException;
import java.util.Optional;

/** What an operator can do about a server that does not start. */
public final class StartFailure {
    private StartFailure() {}

    /** One sentence for the failures that an operator causes and can mend; empty for all others. */
    public static Optional<String> advice(Throwable failure, Config config) {
        return Causes.of(failure).flatMap(e -> adviceOn(e, config).stream()).findFirst();
    }

    /** Whether it is that another program has the embedded database open. */
    public static boolean isInUse(Throwable failure) {
        return Causes.of(failure).anyMatch(Database::isInUse);
    }

    private static Optional<String> adviceOn(Throwable e, Config config) {
        if (e instanceof CannotOpen) {
            return Optional.of(e.getMessage());
        }
        if (e instanceof BindException) {
            return Optional.of("Port " + config.port() + " on " + config.host()
                    + " is taken or not allowed. Choose another with --port, or another address with --host.");
        }
        if (Database.isInUse(e)) {
            return Optional.of("The folder " + config.data() + " is in use by another server. Stop that one, or choose"
                    + " another folder with --data.");
        }
        if (e instanceof FolderFault) {
            return Optional.of("The folder " + config.data() + " cannot be written. Choose another with --data.");
        }
        return Optional.empty();
    }
}
