package groundbass.site;

import groundbass.store.CannotOpen;
import java.net.BindException;
import java.util.Optional;
import java.util.stream.Stream;

/** What an operator can do about a server that does not start. */
public final class StartFailure {
    private static final int DEEPEST = 10;
    private static final String LOCKED = "may be already in use";

    private StartFailure() {}

    /** One sentence for the failures that an operator causes and can mend; empty for all others. */
    public static Optional<String> advice(Throwable failure, Config config) {
        return Stream.iterate(failure, e -> e != null, Throwable::getCause)
                .limit(DEEPEST)
                .flatMap(e -> adviceOn(e, config).stream())
                .findFirst();
    }

    private static Optional<String> adviceOn(Throwable e, Config config) {
        String message = String.valueOf(e.getMessage());
        if (e instanceof CannotOpen) {
            return Optional.of(message);
        }
        if (e instanceof BindException) {
            return Optional.of("Port " + config.port() + " on " + config.host()
                    + " is taken or not allowed. Choose another with --port, or another address with --host.");
        }
        if (message.contains(LOCKED)) {
            return Optional.of("The folder " + config.data() + " is in use by another server. Stop that one, or choose"
                    + " another folder with --data.");
        }
        if (message.startsWith("cannot make the folder") || message.startsWith("cannot use the folder")) {
            return Optional.of("The folder " + config.data() + " cannot be written. Choose another with --data.");
        }
        return Optional.empty();
    }
}
